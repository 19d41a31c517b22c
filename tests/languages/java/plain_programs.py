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
    "a change of another class": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Lamp { String n = "lamp"; }
        static void run() { Lamp l = new Lamp(); l.n = "x"; new Part().go(); }""",
    "a change of another class by a parameter and by var": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Lamp { String n = "lamp"; }
        static void set(Lamp lamp, Lamp[] all) { lamp.n = "x"; all[0].n = "y"; }
        static void run() { var l = new Lamp(); l.n = "x"; set(l, new Lamp[] {l});
          new Part().go(); }""",
    "a change of another class by a field": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Lamp { String n = "lamp"; }
        static class Deck { Lamp lamp = new Lamp(); void set() { this.lamp.n = "x"; lamp.n = "y";
          } }
        static void run() { new Deck().set(); new Part().go(); }""",
    "a change of what another class inherits": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Base { String n = "base"; }
        static class Lamp extends Base { void set() { n = "x"; super.n = "y"; } }
        static void run() { new Lamp().set(); new Part().go(); }""",
    "a change in another object with a body": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Base { String n = "base"; void go() { } }
        static void run() { new Base() { void go() { n = "x"; } }.go(); new Part().go(); }""",
    "a change of what the library has": """
        static class Part { String n = "bow"; void go() { motor(n); } }
        static class Other { String n; }
        static void run() { java.awt.Point p = new java.awt.Point(); p.x = 3; new Part().go(); }""",
    "names in a class of their own": """
        static final class Names { private Names() { } static final String BOW = "bow"; }
        static void run() { motor(Names.BOW); String n = Names.BOW; motor(n); }""",
    "names in an interface": """
        interface Names { String BOW = "bow"; String STERN = BOW + "Other"; }
        static class Deck implements Names { void go() { motor(BOW); motor(STERN); } }
        static void run() { new Deck().go(); }""",
    "names that are put together": """
        static final String SIDE = "bow", END = "Thruster";
        static void run() { motor(SIDE + END); motor(SIDE + "" + END + 'x'); }""",
    "a field that the constructor fills": """
        static class Deck { private final String n; Deck() { n = "bow"; } void go() { motor(n); } }
        static void run() { new Deck().go(); }""",
    "a field that the constructor fills by this": """
        static class Deck { private String n; Deck() { this.n = "bow"; } void go() {
          motor(this.n); } }
        static void run() { new Deck().go(); }""",
    "a field that an initializer fills": """
        static String n;
        static { n = "bow"; }
        static void run() { motor(n); }""",
    "a choice of names": """
        static boolean port = true;
        static void run() { String n = port ? "bow" : "stern"; motor(n); motor(port ? n : "x");
          }""",
    "a loop over a list": """
        static void run() { for (String s : List.of("bow", "stern")) { motor(s); } }""",
    "a loop over a field": """
        private static final List<String> ALL = Arrays.asList("bow", "stern");
        static void run() { for (final String s : ALL) motor(s); ALL.size(); ALL.get(0).trim();
          }""",
    "a loop over each of several": """
        static final String[][] ALL = {{"bow", "stern"}, {"net"}};
        static void run() { for (String[] r : ALL) for (String s : r) motor(s); }""",
    "an enum with a getter": """
        enum Side { BOW("bow"), STERN("stern"); private final String n; Side(String n) {
          this.n = n; }
          String getName() { return n; } public String other() { return this.n; } }
        static void run() { motor(Side.BOW.getName()); motor(Side.STERN.other()); }""",
    "an enum with two constructors": """
        enum Side { BOW("bow"), STERN("stern", 2); final String n; final int k;
          Side(String n) { this.n = n; this.k = 0; } Side(String n, int k) { this.n = n;
          this.k = k; } }
        static void run() { motor(Side.BOW.n); motor(Side.STERN.n); }""",
    "a method that gives a name": """
        private static String bow() { return "bow"; }
        static void run() { motor(bow()); final String n = bow(); motor(n); }""",
    "a local name that is declared first": """
        static void run() { String n; n = "bow"; motor(n); }""",
    "a name in an inner class": """
        static class Deck { static final String BOW = "bow"; class Inner { void go() {
          motor(BOW); } } }
        static void run() { new Deck().new Inner().go(); }""",
    "a name in a lambda": """
        static final String BOW = "bow";
        static void run() { Runnable r = () -> motor(BOW);
          r.run(); Runnable s = () -> {
          String n = BOW; motor(n); }; s.run(); }""",
    "a name in a switch": """
        static final String BOW = "bow";
        static void run() { switch (1) { case 1: motor(BOW); break; default: motor("x"); }
          int k = 1; switch (k) { case 1 -> { String n = BOW;
          motor(n); } default -> { } } }""",
    "a name in a try": """
        static void run() { try { String n = "bow"; motor(n); } catch (RuntimeException e) { }
          finally { String n = "stern";
          motor(n); } }""",
    "a name by the class around": """
        static String n = "bow";
        static class Deck { String n = "x"; void go(String q) { motor(Main2.n); } }
        static class Main2 { static final String n = "stern"; }
        static void run() { new Deck().go("y"); }""",
    "a record": """
        record Deck(String n, int k) { static final String BOW = "bow"; void go() { motor(BOW); } }
        static void run() { new Deck("x", 1).go(); }""",
    "a generic class": """
        static class Deck<T> { protected String n = "bow"; T t; void go() { motor(n); } }
        static class Upper extends Deck<String> { void up() { motor(n); } }
        static void run() { new Upper().go(); new Upper().up(); }""",
    "an abstract class": """
        static abstract class Base { abstract void go(); static final String BOW = "bow"; }
        static class Deck extends Base { @Override void go() { motor(BOW); motor(Base.BOW); } }
        static void run() { new Deck().go(); }""",
    "a text block": """
        static final String BOW = \"\"\"
            bow\"\"\";
        static void run() { motor(BOW); }""",
    "an object that is made": """
        static class Side { final String n; Side(String n) { this.n = n; } }
        static void run() { Side s = new Side("bow"); motor(s.n); }""",
    "an object that is kept": """
        static class Side { private final String n; Side(String m) { n = m; } String n() {
          return n; } }
        static final Side BOW = new Side("bow");
        static void run() { motor(BOW.n()); }""",
    "an object with a name of its own": """
        static class Side { String n = "bow"; void move() { n.length(); } }
        static void run() { Side s = new Side(); s.move(); motor(s.n); }""",
    "each of a list": """
        static void run() { List.of("bow", "stern").forEach(s -> motor(s)); }""",
    "each of a stream": """
        static final String[] ALL = {"bow", "stern"};
        static void run() { Arrays.stream(ALL).forEach(s -> motor(s)); List.of(ALL).forEach((n) -> {
          motor(n); }); Arrays.asList("x", "y").stream().filter(n ->
          n.length() > 0).count(); }""",
    "a copy that is changed": """
        static final List<String> ALL = List.of("bow", "stern");
        static void run() { List<String> own = new ArrayList<>(ALL); own.set(0, "x");
          String[] a = {"net"};
          a.clone()[0] = "x"; for (String s : ALL) motor(s); for (String s : a)
          motor(s); }""",
}
