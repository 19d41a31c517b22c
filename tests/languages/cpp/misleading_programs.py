"""Small programs in which a name is another one than it looks, each a body of a namespace.

None of the names that they look up may be told.
"""

from __future__ import annotations

UNSURE = {
    "a constructor's list": """
        struct A { const std::string n = "bow"; A() : n("stern") {} void go() { motor(n); } };
        void run() { A().go(); }""",
    "a constructor's list that stands outside": """
        template <class T> struct A { A(); const std::string n = "bow"; void go() { motor(n); } };
        template <class T> A<T>::A() : n("stern") {}
        void run() { A<int>().go(); }""",
    "a change above a local name": """
        std::string n = "bow";
        void run() { { n.append("x"); std::string n = "stern"; motor(n); } motor(n); }""",
    "a derived class": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B : A { B() { n = "stern"; } };
        void run() { B().go(); }""",
    "a derived class with this": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B : A { B() { this->n = "stern"; } };
        void run() { B().go(); }""",
    "a derived class with the other's name": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B : A { B() { A::n = "stern"; } };
        void run() { B().go(); }""",
    "a derived class beside a name further out": """
        std::string n = "port";
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B : A { B() { n.append("x"); } };
        void run() { B().go(); }""",
    "a class derived from a derived one of a template": """
        template <class T> struct A { std::string n = "bow"; void go() { motor(n); } };
        template <class T> struct B : A<T> { B() { this->n = "stern"; } };
        void run() { B<int>().go(); }""",
    "a list for an object": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        void run() { A a{"stern"}; a.go(); }""",
    "a list with names": """
        struct A { int side = 0; std::string n = "bow"; void go() { motor(n); } };
        void run() { A a{.n = "stern"}; a.go(); }""",
    "an object with a value": """
        struct A { std::string n = "bow"; };
        A make() { A a; a = A{"stern"}; return a; }
        void run() { A a = make(); motor(a.n); }""",
    "an object with another constructor": """
        struct A { std::string n = "bow"; A() = default; A(const char* other);  };
        A::A(const char* other) { *this = A(); n = other; }
        void run() { A a("stern"); motor(a.n); }""",
    "a parameter": """
        struct A { std::string n = "bow"; };
        void go(const A& a) { motor(a.n); }
        void run() { go({"stern"}); }""",
    "an object that is replaced": """
        struct A { std::string n = "bow"; };
        A make() { return {"stern"}; }
        void run() { A a; a = make(); motor(a.n); }""",
    "a function of an object": """
        struct A { std::string n = "bow"; std::string name() const { return n; } };
        A make() { return {"stern"}; }
        void run() { A a = make(); motor(a.name()); }""",
    "an object of an object": """
        struct A { std::string n = "bow"; }; struct B { A a; };
        B make() { return {{"stern"}}; }
        void run() { B b = make(); motor(b.a.n); }""",
    "a virtual function that stands outside": """
        struct A { virtual const char* n(); void go() { motor(n()); } };
        const char* A::n() { return "bow"; }
        struct B : A { const char* n() { return "stern"; } };
        void run() { B().go(); }""",
    "a function that is virtual by its base": """
        struct A { virtual const char* n() { return "bow"; } };
        struct B : A { const char* n() { return "bow"; } void go() { motor(n()); } };
        struct C : B { const char* n() { return "stern"; } };
        void run() { C().go(); }""",
    "a function that is virtual by the base of its base": """
        struct A { virtual const char* n() = 0; };
        struct B : A {};
        struct C : B { const char* n() { return "bow"; } void go() { motor(n()); } };
        struct D : C { const char* n() { return "stern"; } };
        void run() { D().go(); }""",
    "a function of a template's base": """
        struct A { virtual const char* n() { return "bow"; } };
        template <class T> struct B : T { const char* n() { return "bow"; } void go() {
          motor(n()); } };
        struct C : B<A> { const char* n() { return "stern"; } };
        void run() { C().go(); }""",
    "a template with another body for one argument": """
        template <int N> const char* n() { return "bow"; }
        template <> const char* n<2>() { return "stern"; }
        void run() { motor(n<2>()); }""",
    "a template with another value for one argument": """
        template <int N> constexpr const char* n = "bow";
        template <> constexpr const char* n<2> = "stern";
        void run() { motor(n<2>); }""",
    "a class for one argument": """
        template <int N> struct A { static constexpr char n[] = "bow"; };
        template <> struct A<2> { static constexpr char n[] = "stern"; };
        void run() { motor(A<2>::n); }""",
    "a class with its own idea": """
        struct Name { std::string text; Name(const char* given) : text("stern") {}
          operator std::string() const { return text; } };
        const Name n = "bow";
        void run() { motor(n); }""",
    "a class with its own idea, in other forms": """
        struct Name { Name(const char*) {} operator std::string() const { return "stern"; }
          std::string str() const { return "stern"; } const char* c_str() const { return "stern"; }
          std::string data() const { return "stern"; } };
        Name f() { return "bow"; } auto g() -> Name { return "bow"; }
        void run() { auto x = Name{"bow"}; motor(x); Name y("bow"); motor(y); motor(Name("bow"));
          motor(x.str()); motor(x.c_str()); motor(Name{"bow"}.data()); motor(f()); motor(g());
          std::vector<Name> all{"bow"}; for (auto& one : all) motor(one);
          motor((Name) "bow"); motor(static_cast<Name>("bow"));
          for (Name one : {"bow"}) motor(one); Name z = "x"; z = "bow"; motor(z); }""",
    "a sum of a class": """
        struct S { S(const char*) {} }; std::string operator+(S, const std::string&) {
          return "stern"; }
        void run() { S a("bow"); std::string b = "x"; motor(a + b); }""",
    "a string of one's own": """
        namespace my { struct string { string(const char*) {}
          operator std::string() const { return "stern"; } }; }
        void run() { my::string n = "bow"; motor(n); motor(my::string("bow"));
          motor(my::string{"bow"}); using my::string; string m = "bow"; motor(m); }""",
    "another name of a class": """
        struct Name { Name(const char*) {} operator std::string() const { return "stern"; } };
        using Text = Name; const Text n = "bow";
        void run() { motor(n); motor(Text("bow")); }""",
    "a list that is returned": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        A make() { return {"stern"}; }
        void run() { make().go(); }""",
    "a list that is given": """
        class A { int side = 0; public: std::string n = "bow"; void go() { motor(n); }
          A() = default; A(int, std::string m) : n(m) {} };
        void use(A a) { a.go(); }
        void run() { use({3, "stern"}); }""",
    "a list for one that is given": """
        struct A { std::string n = "bow"; void go() const { motor(n); } };
        void use(const std::vector<A>& all) { for (const auto& one : all) one.go(); }
        void run() { use({{"stern"}}); }""",
    "members in one place": """
        union U { const char* n = "bow"; const char* m; };
        void run() { U u; u.m = "stern"; motor(u.n); }""",
    "a member that a member changes": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        void run() { A a; std::string A::*m = &A::n; a.*m = "stern"; a.go(); }""",
    "a type that a template is given": """
        struct T { static constexpr char k[] = "bow"; };
        struct S { static constexpr char k[] = "stern"; };
        template <class T> void go() { motor(T::k); }
        void run() { go<S>(); }""",
    "a type that a template is given, in what a function gives": """
        struct T { static constexpr char k[] = "bow"; };
        struct S { static constexpr char k[] = "stern"; };
        template <class T> const char* n() { return T::k; }
        void run() { motor(n<S>()); }""",
    "a name that a template is given": """
        const std::string n = "bow"; constexpr char m[] = "stern";
        template <const char* n> void go() { motor(n); }
        void run() { go<m>(); }""",
    "a function that gives a reference": """
        std::string n = "bow"; std::string m = "bow"; std::string k = "bow";
        std::string& f() { return n; } auto& g() { return m; } auto h() -> std::string& {
          return k; }
        void run() { f() = g() = h() = "stern"; motor(n); motor(m); motor(k); }""",
    "a function of an object that gives a reference": """
        struct A { std::string n = "bow"; std::string& name() { return n; } };
        void run() { A a; a.name() = "stern"; motor(a.n); }""",
    "a member that refers": """
        std::string n = "bow"; struct R { std::string& r; };
        void run() { R r{n}; r.r = "stern"; motor(n); }""",
    "a macro that is another name": """
        #define ALIAS_OF_N n
        std::string n = "bow";
        void run() { ALIAS_OF_N = "stern"; motor(n); }""",
    "a macro in a macro": """
        #define GIVE_N(x, y) x = y
        #define GIVE_STERN(x) GIVE_N(x, "stern")
        std::string n = "bow";
        void run() { GIVE_STERN(n); motor(n); }""",
    "a static member by a derived class": """
        struct A { static inline std::string n = "bow"; };
        struct B : A { static void set() { n = "stern"; } };
        void run() { B::set(); motor(A::n); }""",
    "a list of one's own": """
        namespace my { template <class T> struct vector { std::string a[1] = {"stern"};
          vector(std::initializer_list<T>) {} auto begin() { return a; } auto end() {
          return a + 1; } }; }
        void run() { my::vector<std::string> all{"bow"}; for (auto n : all) motor(n); }""",
    "a list under another name of the class": """
        struct K { std::string n = "bow"; void go() { motor(n); } }; using C = K; typedef C D;
        void run() { C c{"stern"}; c.go(); D d{"port"}; d.go(); }""",
    "a list of a class that is derived": """
        struct C { std::string n = "bow"; void go() { motor(n); } }; struct D : C { int side = 0; };
        void run() { D d{{"stern"}, 3}; d.go(); }""",
    "a list of a class that is derived, without inner brackets": """
        struct C { std::string n = "bow"; void go() { motor(n); } }; struct D : C {};
        void run() { D d{"stern"}; d.go(); }""",
    "a list of a class with an object of it": """
        struct C { std::string n = "bow"; void go() { motor(n); } }; struct B { int side; C c; };
        void run() { B b{3, "stern"}; b.c.go(); B other{.side = 3, .c = {"port"}}; other.c.go();
          }""",
    "a list of a class with an object of another name": """
        struct C { std::string n = "bow"; void go() { motor(n); } }; using K = C;
        struct B { int side; K c; }; using E = B;
        void run() { E b{3, {"stern"}}; b.c.go(); }""",
    "lists in a table": """
        struct C { std::string n = "bow"; void go() const { motor(n); } };
        void run() { std::map<int, C> all{{1, {"stern"}}}; all.at(1).go(); }""",
    "lists in a list that is returned": """
        struct C { std::string n = "bow"; void go() const { motor(n); } };
        std::vector<C> make() { return {{"stern"}}; }
        void run() { make()[0].go(); }""",
    "brackets for a list": """
        struct C { std::string n = "bow"; void go() const { motor(n); } };
        void run() { C c("stern"); c.go(); }""",
    "new names for members": """
        struct C { std::string n = "bow"; int side = 0; void go() const { motor(n); } };
        void run() { C c; auto& [text, number] = c; text = "stern"; c.go(); }""",
    "objects that are made in a list": """
        struct A { std::string n = "bow"; }; std::vector<A> all;
        void run() { all.emplace_back("stern"); motor(all[0].n); motor(all.back().n); }""",
    "a list that is returned with a reference": """
        struct Box { std::string& r; }; Box make(std::string& s) { return {s}; }
        void run() { std::string n = "bow"; make(n).r = "stern"; motor(n); }""",
}
