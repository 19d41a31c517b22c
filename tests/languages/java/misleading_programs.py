"""Small programs in which a name is another one than it looks, each the body of a class.

None of the names that they look up may be told.
"""

from __future__ import annotations

UNSURE = {
    "an element of an element": """
        static String[][] n = {{"bow"}};
        static void run() { n[0][0] = "x"; for (String[] r : n) for (String s : r) motor(s); }""",
    "an array in an array": """
        static String[] n = {"bow"};
        static String[][] all = {n};
        static void run() { all[0][0] = "x"; for (String s : n) motor(s); }""",
    "an array put into an array": """
        static String[] n = {"bow"};
        static void run() { String[][] all = new String[2][]; all[1] = n; all[1][0] = "x";
          for (String s : n) motor(s); }""",
    "an array put into a list": """
        static void run() { String[] n = {"bow"}; List<String[]> all = new ArrayList<>();
          all.add(n); all.get(0)[0] = "x"; for (String s : n) motor(s); }""",
    "a loop over arrays": """
        static void run() { String[][] n = {{"bow"}}; for (String[] r : n) r[0] = "x";
          for (String[] r : n) for (String s : r) motor(s); }""",
    "brackets": """
        static void run() { String[] n = {"bow"}; (n)[0] = "x"; for (String s : n) motor(s); }""",
    "a choice": """
        static void run() { String[] n = {"bow"}, m = {"stern"}; (m.length > 1 ? m : n)[0] = "x";
          for (String s : n) motor(s); }""",
    "a method that fills": """
        static void fill(String[] a) { a[0] = "x"; }
        static void run() { String[] n = {"bow"}; fill(n); for (String s : n) motor(s); }""",
    "a method that fills by another": """
        static void fill(String a[]) { a[0] = "x"; }
        static void more(int turn, String[] all) { fill(all); }
        static void run() { String[] n = {"bow"}; more(1, n); for (String s : n) motor(s); }""",
    "a method that takes several": """
        static void fill(String... a) { a[0] = "x"; }
        static void run() { String[] n = {"bow"}; fill(n); for (String s : n) motor(s); }""",
    "a method that takes several arrays": """
        static void fill(String[]... all) { all[1][0] = "x"; }
        static void run() { String[] n = {"bow"}, m = {"stern"}; fill(m, n);
          for (String s : n) motor(s); }""",
    "a method that sets": """
        static void fill(List<String> l) { l.set(0, "x"); }
        static void run() { List<String> n = Arrays.asList("bow"); fill(n);
          for (String s : n) motor(s); }""",
    "a method that gives it back": """
        static String[] same(String[] a) { return a; }
        static void run() { String[] n = {"bow"}; same(n)[0] = "x";
          for (String s : n) motor(s); }""",
    "a method that gives a field": """
        static String[] n = {"bow"};
        static String[] all() { return n; }
        static void run() { all()[0] = "x"; for (String s : n) motor(s); }""",
    "an object that keeps it": """
        static class Kept { String[] kept; Kept(String[] k) { kept = k; }
          void go() { kept[0] = "x"; } }
        static void run() { String[] n = {"bow"}; new Kept(n).go();
          for (String s : n) motor(s); }""",
    "a base that keeps it": """
        static class Kept { String[] kept; Kept(String[] k) { kept = k; }
          void go() { kept[0] = "x"; } }
        static class Other extends Kept { Other(String[] o) { super(o); } }
        static void run() { String[] n = {"bow"}; new Other(n).go();
          for (String s : n) motor(s); }""",
    "a view": """
        static void run() { String[] n = {"bow"}; Arrays.asList(n).set(0, "x");
          for (String s : n) motor(s); }""",
    "an iterator": """
        static void run() { List<String> n = Arrays.asList("bow");
          ListIterator<String> i = n.listIterator(); i.next(); i.set("x");
          for (String s : n) motor(s); }""",
    "an enum whose constructor changes its parameter": """
        enum Side { BOW("bow"); final String n; Side(String m) { m = m + "x"; n = m; } }
        static void run() { motor(Side.BOW.n); }""",
    "an enum whose constructor changes its parameter afterwards": """
        enum Side { BOW("bow"); String n; Side(String m) {
          if (m != null) { m += "x"; } this.n = m; } }
        static void run() { motor(Side.BOW.n); }""",
    "a class whose constructor changes its parameter": """
        static class Side { final String n; Side(String m) { m = m + "x"; n = m; } }
        static void run() { motor(new Side("bow").n); }""",
    "a change by a parameter": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static void set(Part other) { other.n = "x"; }
        static void run() { Part p = new Part(); set(p); p.go(); }""",
    "a change by the name of a class above": """
        static class Part { String n = "bow"; }
        static class Upper extends Part { void go() { motor(n); } }
        static void run() { Upper u = new Upper(); Part p = u; p.n = "x"; u.go(); }""",
    "a change by the name of a class below": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Upper extends Part { }
        static void run() { Upper u = new Upper(); u.n = "x"; u.go(); }""",
    "a change by super": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Upper extends Part { void set() { super.n = "x"; } }
        static void run() { Upper u = new Upper(); u.set(); u.go(); }""",
    "a change in an object with a body": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static void run() { Part p = new Part() { void go() { n = "x"; super.go(); } }; p.go();
          }""",
    "a change by what a method gives": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static Part part = new Part();
        static Part part() { return part; }
        static void run() { part().n = "x"; part.go(); }""",
    "a change by an element": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static void run() { Part[] p = {new Part()}; p[0].n = "x"; p[0].go(); }""",
    "a change by a loop": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static void run() { Part[] all = {new Part()}; for (Part p : all) p.n = "x";
          for (var p : all) p.n = p.n + "y"; all[0].go(); }""",
    "a change by a cast": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static void run() { Object o = new Part(); ((Part) o).n = "x"; ((Part) o).go(); }""",
    "a change by a parameter of a class": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static <T extends Part> void set(T other) { other.n = "x"; }
        static void run() { Part p = new Part(); set(p); p.go(); }""",
    "a change of what a class inherits": """
        static class Part { String n = "bow"; }
        static class Upper extends Part { void set() { n = "x"; } void go() { motor(n); } }
        static void run() { Upper u = new Upper(); u.set(); u.go(); }""",
    "a change of a static name": """
        static class Part { static String n = "bow"; static void go() { motor(n); } }
        static void run() { Part.n = "x"; Part.go(); }""",
    "a list of an object that is filled": """
        static class Part { String[] n = {"bow"}; void go() { for (String s : n) motor(s); } }
        static void run() { Part p = new Part(); p.n[0] = "x"; p.go(); }""",
    "a lambda that fills": """
        static void run() { String[] n = {"bow"};
          java.util.function.Consumer<String[]> c = q -> q[0] = "x"; c.accept(n);
          for (String s : n) motor(s); }""",
    "a lambda that gives it": """
        static void run() { String[] n = {"bow"}; java.util.function.Supplier<String[]> c = () -> n;
          c.get()[0] = "x"; for (String s : n) motor(s); }""",
    "a copy of a list that has it": """
        static void run() { String[] n = {"bow"}; List<String[]> b = new ArrayList<>(List.of(n, n));
          b.get(0)[0] = "x"; for (String s : n) motor(s); }""",
    "a stream that has it": """
        static void run() { String[] n = {"bow"};
          Arrays.stream(new String[][] {n}).forEach(q -> q[0] = "x");
          for (String s : n) motor(s); }""",
}
