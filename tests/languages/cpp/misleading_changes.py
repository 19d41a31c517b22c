"""Small programs that change a name by a cast, a function or an iterator, each a namespace's body.

None of the names that they look up may be told.
"""

from __future__ import annotations

HANDED_ON = {
    "a const that is only a part of a word": """
        namespace constants { struct S { std::string text; void set() { text = "stern"; } }; }
        using constant = std::string;
        void run() { constant n = "bow"; constant& m = n; m = "stern"; motor(n);
          std::string k = "bow"; auto set = [](constant& r) { r = "stern"; }; set(k); motor(k);
          }""",
    "elements as a type with const in its name": """
        using constant = char;
        void run() { std::string n = "bow"; std::any_of(n.begin(), n.end(), [](constant& c) {
          c = 's'; return false; }); motor(n); }""",
    "a tuple of references with const in the name": """
        using constant = std::string;
        void run() { std::string n = "bow"; std::tuple<constant&> t{n};
          std::get<0>(t) = "stern"; motor(n); }""",
    "letters by a cast": """
        void run() { std::string n = "bow"; char* p = (char*) n.c_str(); p[0] = 's'; motor(n); }""",
    "letters by a cast at once": """
        void run() { std::string n = "bow"; ((char*) n.c_str())[0] = 's'; motor(n); }""",
    "letters by a const cast": """
        void run() { std::string n = "bow"; char* p = const_cast<char*>(n.c_str()); *p = 's';
          std::string m = "bow"; *const_cast<char*>(m.data()) = 's'; motor(n); motor(m); }""",
    "a const text by a const cast": """
        void run() { std::string k = "bow"; const std::string& n = k;
          const_cast<std::string&>(n) = "stern"; motor(k); }""",
    "letters that a function writes by a cast": """
        void fill(char* p) { *p = 's'; }
        void run() { std::string n = "bow"; fill((char*) n.c_str()); motor(n); }""",
    "an operator by its name": """
        void run() { std::string n = "bow"; n.operator=("stern"); motor(n);
          std::string m = "bow"; m.operator+=("x"); motor(m);
          std::string k = "bow"; k.operator[](0) = 's'; motor(k); }""",
    "a function that fills": """
        void fill(std::string& s) { s = "stern"; }
        void run() { std::string n = "bow"; fill(n); motor(n); }""",
    "a function further down that fills": """
        void fill(std::string& s);
        void run() { std::string n = "bow"; fill(n); motor(n); }
        void fill(std::string& s) { s = "stern"; }""",
    "functions that fill in other ways": """
        void one(std::string* s) { *s = "stern"; }
        void two(auto&& s) { s = "stern"; }
        template <class T> void three(T& s) { s = "stern"; }
        template <class... T> void four(T&... all) { ((all = "stern"), ...); }
        struct Filler { void five(int, std::string& s) { s = "stern"; }
          static void six(std::string& s) { s.clear(); } };
        void run() { std::string n = "bow"; one(&n); motor(n); std::string m = "bow"; two(m);
          motor(m); std::string k = "bow"; three(k); motor(k); std::string l = "bow"; four(l);
          motor(l); std::string o = "bow"; Filler().five(1, o); motor(o);
          std::string p = "bow"; Filler::six(p); motor(p); }""",
    "one of several functions that fills": """
        void fill(int, const std::string&) {}
        void fill(std::string& s, int) { s = "stern"; }
        void run() { std::string n = "bow"; fill(n, 1); motor(n); }""",
    "a function that has another one fill": """
        void inner(std::string& s) { s = "stern"; }
        void outer(std::string& t) { inner(t); }
        void run() { std::string n = "bow"; outer(n); motor(n); }""",
    "functions that go round and fill": """
        void even(std::string& s, int n);
        void odd(std::string& s, int n) { if (n) even(s, n - 1); }
        void even(std::string& s, int n) { if (n) odd(s, n - 1); else s = "stern"; }
        void run() { std::string n = "bow"; odd(n, 3); motor(n); }""",
    "a constructor that fills": """
        struct Filler { Filler(std::string& s) { s = "stern"; } };
        void run() { std::string n = "bow"; Filler f(n); motor(n); std::string m = "bow";
          Filler{m}; motor(m); std::string k = "bow"; new Filler(k); motor(k); }""",
    "a lambda that fills": """
        void run() { std::string n = "bow"; auto fill = [](std::string& s) { s = "stern"; };
          fill(n); motor(n); }""",
    "a function that fills letters": """
        void fill(char* s) { s[0] = 's'; } void other(char s[9]) { s[0] = 's'; }
        void run() { char n[9] = "bow"; fill(n); motor(n); char m[9] = "bow"; other(m);
          motor(m); }""",
    "a function that fills a list": """
        void fill(std::vector<std::string>& all) { all[0] = "stern"; }
        void run() { std::vector<std::string> all{"bow"}; fill(all); motor(all[0]);
          for (auto& one : all) motor(one); }""",
    "a function that fills between iterators": """
        template <class T> void fill(T one, T end) { for (; one != end; ++one) *one = "stern"; }
        void run() { std::vector<std::string> all{"bow"}; fill(all.begin(), all.end());
          motor(all[0]); }""",
    "another name of another name": """
        void run() { std::string n = "bow"; auto& m = n; auto& k = m; k = "stern"; motor(n); }""",
    "iterators that change": """
        void run() { std::vector<std::string> all{"bow"}; auto it = all.begin(); *it = "stern";
          motor(all[0]); std::vector<std::string> more{"bow"}; for (auto it = more.begin();
          it != more.end(); ++it) { it->append("x"); } for (auto& one : more) motor(one);
          std::vector<std::string> some{"bow"}; std::vector<std::string>::iterator at =
          some.begin(); auto same = at; same[0] = "stern"; motor(some.front()); }""",
    "an iterator of another list": """
        void run() { std::vector<std::string> one{"bow"}, other{"stern"}; auto it = one.begin();
          it = other.begin(); motor(*it); }""",
    "algorithms that change": """
        void run() { std::vector<std::string> all{"bow"}; std::for_each(all.begin(), all.end(),
          [](std::string& s) { s = "stern"; }); motor(all[0]);
          std::vector<std::string> more{"bow"}; std::transform(all.begin(), all.end(),
          more.begin(), [](const auto& s) { return s; }); motor(more[0]);
          std::vector<std::string> some{"bow"}; std::copy(all.begin(), all.end(), some.begin());
          motor(some[0]); }""",
    "an algorithm with a function that changes": """
        void set(std::string& s) { s = "stern"; }
        void run() { std::vector<std::string> all{"bow"}; std::for_each(all.begin(), all.end(),
          set); motor(all[0]); }""",
    "an element that is changed": """
        void run() { std::vector<std::string> all{"bow", "x"}; all[0] = "stern"; motor(all[0]);
          std::string more[] = {"bow"}; more[0] += "x"; motor(more[0]);
          const char* some[] = {"bow"}; some[0] = "stern"; motor(some[0]); }""",
    "an element further on": """
        std::string all[3] = {"bow", "bow"};
        void run() { motor(all[2]); }""",
    "a number that is no place": """
        struct Part { Part(const char*) {} std::string operator[](int) { return "stern"; } };
        void run() { Part n = "bow"; motor(n[0]); }""",
    "a member of an object that a constructor makes otherwise": """
        struct A { std::string n = "bow"; A() = default; A(int) : n("stern") {} };
        void go(const A& a) { motor(a.n); }
        void run() { A a(3); go(a); A* b = new A(3); motor(b->n); auto c = a; motor(c.n); }""",
    "a second constructor that leaves a member empty": """
        struct A { std::string n; A() : n("bow") {} A(int) {} void go() { motor(n); } };
        void run() { A a(3); a.go(); }""",
    "a member of an object of the class that is changed": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        void run() { A a; A* b = &a; b->n = "stern"; a.go(); std::vector<A> all(1);
          for (auto& one : all) one.n = "stern"; all[0].go(); }""",
    "a member of a base that is changed by an object": """
        struct A { std::string n = "bow"; void go() { motor(n); } }; struct B : A {};
        void run() { B b; b.n = "stern"; b.go(); }""",
    "a member by another name of the class": """
        struct A { std::string n = "bow"; void go() { motor(n); } }; using B = A;
        void run() { B b; b.n = "stern"; b.go(); }""",
    "a member in a template": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B { std::string n = "x"; };
        template <class B> void set(B& b) { b.n = "stern"; }
        void run() { A a; set(a); a.go(); }""",
    "a local variable of a function that is changed": """
        std::string name(bool other) { std::string n = "bow"; if (other) n = "stern"; return n; }
        void run() { motor(name(true)); }""",
    "a function that returns early": """
        std::string name(bool other) { if (other) return "stern"; const char* n = "bow"; return n; }
        void run() { motor(name(true)); }""",
    "a function that a class here overrides": """
        struct A { virtual std::string n() const { return "x"; } };
        struct B : A { std::string n() const override { return "bow"; }
          void go() { motor(n()); } };
        struct C : B { std::string n() const override { return "stern"; } };
        void run() { C().go(); }""",
    "a text with a letter that ends it": r"""
        using namespace std::literals; const char n[] = "stern\0x";
        void run() { motor("stern\0x"); motor(n); motor("stern\0" "x"); motor("stern\x0y"s.c_str());
          }""",
}
