"""Small programs whose names are what they look, each the body of a class: all must be told."""

from __future__ import annotations

SURE = {
    "a list that is only read": """
        static final String[] ALL = {"bow", "stern"};
        static int count(String[] a) { int n = 0; for (String s : a) n += s.length(); return n; }
        static void run() { count(ALL); System.out.print(""); for (String s : ALL) motor(s); }""",
    "a list of what another has": """
        static final String[] ALL = {"bow", "stern"};
        static void run() { List<String> seen = new ArrayList<>(); for (String s : ALL) seen.add(s);
          seen.set(0, "x"); String[] other = {ALL[0]}; other[0] = "y";
          for (String s : ALL) motor(s); }""",
    "a method that fills another array": """
        static final String[] ALL = {"bow", "stern"};
        static void fill(String[] a, String[] from) { a[0] = from[1]; }
        static void run() { fill(new String[1], ALL); for (String s : ALL) motor(s); }""",
    "a parameter of another method by the same name": """
        static void read(String[] a) { for (String s : a) s.length(); }
        static void fill(String[] a) { a[0] = "x"; }
        static void run() { String[] n = {"bow"}, m = {"stern"}; read(n); fill(m);
          for (String s : n) motor(s); }""",
    "an enum": """
        enum Side { BOW("bow", 1); final String n; Side(String m, int k) { n = m; k = 2; } }
        static void run() { motor(Side.BOW.n); }""",
    "a text that is handed on": """
        static String n = "bow";
        static void fill(String[] n) { n[0] = "x"; }
        static void run() { fill(new String[] {n}); List<String> all = Arrays.asList(n);
          all.set(0, "x"); motor(n); }""",
}
