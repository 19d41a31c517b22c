"""Small programs in which a name is another one than it looks, each a body of a namespace.

Of those in `SURE` the text must be told, of those in `UNSURE` it must not: what they look up is
something else than what the name is declared with, or would be with another argument.
"""

from __future__ import annotations

SURE = {
    "a member with a default": """
        struct A { const std::string n = "bow"; void go() { motor(n); } };
        void run() { A().go(); }""",
    "a member that another class has too": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B { std::string n; B() { n = "stern"; } };
        void run() { B b; A().go(); }""",
    "a local name that a class has too": """
        struct A { std::string n = "bow"; void go() { motor(n); } };
        struct B : A { void other() { std::string n; n = "stern"; motor(n); } };
        void run() { A().go(); B().other(); }""",
    "a member with the name of parameters": """
        struct A { std::string n = "bow"; void go(const std::string& n, int* m = nullptr);
          void set(std::string& n); void put(const char* n = "x"); void go() { motor(n); } };
        void other(std::string& n, std::string all[]);
        void run() { A().go(); }""",
    "a plain object": """
        struct A { std::string n = "bow"; void move() {} };
        void run() { A a; a.move(); motor(a.n); A b{}; motor(b.n); A c = A(); motor(c.n);
          auto d = A{}; motor(d.n); }""",
    "what is static": """
        struct A { static constexpr char n[] = "bow"; int side = 0; };
        A make() { return {}; }
        void go(const A& a) { motor(a.n); }
        void run() { A a{3}; motor(a.n); A b = make(); motor(b.n); go(a); }""",
    "a function of any object": """
        struct A { int side = 0; const char* n() const { return "bow"; } };
        void run() { A a{3}; motor(a.n()); }""",
    "a list with other members": """
        struct A { std::string n = "bow"; int side = 0; void go() { motor(n); } };
        void run() { A a{.side = 3}; a.go(); }""",
    "a function that overrides nothing": """
        struct A { const char* m() { return "stern"; } };
        struct B : A { const char* n(); };
        const char* B::n() { return "bow"; }
        void run() { B b; motor(b.n()); }""",
    "a function of a final class": """
        struct A { virtual const char* n() { return "stern"; } };
        struct B final : A { const char* n() override { return "bow"; } void go() { motor(n()); } };
        void run() { B().go(); }""",
    "what is only read": """
        #define SHOW(x) std::cerr << (x)
        std::string n = "bow"; std::vector<std::string> all{"a"};
        std::size_t size(const std::string& s) { return s.size(); }
        std::string copy() { return n; }
        const std::string& shown() { return n; }
        void run() {
          auto other = n; other += "x"; const std::string& same = n; std::string_view view(n);
          if (n == "x" || n.empty() || size(n) > 9) std::cerr << n << n.substr(1) << n[0];
          for (const auto& one : all) std::cerr << (flag() ? n : one);
          for (auto& one : all) motor(one);
          std::string whole = n + "x" + std::to_string(n.length()); char first = n.front();
          auto tell = [=] { motor(n); }; tell(); [&n] { motor(n); }();
          char text[9]; std::snprintf(text, 9, "%s", n.c_str()); std::strcpy(text, n.c_str());
          std::pair<std::string, int> pair(n, 1); std::vector<std::string> copies{n, n};
          SHOW(n);
          motor(n); motor(same); motor(all[0].empty() ? n : n);
        }""",
    "what is only read, without std::": """
        #define LOG(n) std::cerr << n
        using namespace std;
        inline bool has(const string& s) { return count(s.begin(), s.end(), 'x') > 0; }
        void run() {
          string n = "bow"; vector<string> all{"bow"}; char text[9] = "bow"; auto copied = n;
          copied += to_string(n.size()); sprintf(text + 1, "%s", n.c_str()); LOG(n);
          if (has(n) && all.size() > 9) cerr << n << endl;
          pair<string, int> pair(n, 1); auto made = make_pair(n, 1); vector<string> copies{n};
          motor(n); motor(string(n)); motor(string{n}); motor(all[0].empty() ? n : n);
          for (const string& one : all) motor(one);
        }""",
    "other names of text": """
        using Name = std::string; typedef const char* Text; using Letters = const char*;
        typedef char Short[9]; using std::string;
        const Name a = "bow"; Text b = "bow"; Letters c("bow"); Short d = "bow"; string e{"bow"};
        Name f() { return "bow"; }
        void run() { motor(a); motor(b); motor(c); motor(d); motor(e); motor(f());
          motor(Name("bow")); motor(Name{"bow"}); motor((Text) "bow");
          std::vector<Name> all{"bow"}; for (const Name& one : all) motor(one); }""",
    "a function that is no template": """
        const char* n() { return "bow"; }
        template <class T> const char* m() { return "stern"; }
        void run() { motor(n()); motor(m<int>()); }""",
    "a name of a namespace further out": """
        namespace x { const char n[] = "stern"; }
        namespace y { const char n[] = "bow";
          namespace z { using namespace x; void go() { motor(n); } } }
        void run() { y::z::go(); }""",
    "a name of a namespace that is opened in a function": """
        namespace x { const char n[] = "stern"; const char m[] = "bow"; }
        namespace y { const char n[] = "bow";
          void go() { using namespace x; motor(n); motor(m); } }
        void run() { y::go(); }""",
    "a name of the namespace around": """
        const char n[] = "stern";
        namespace a { const char n[] = "bow"; struct K { void go(); }; }
        namespace a::b { void go() { motor(n); } }
        void a::K::go() { motor(n); }
        void run() { a::b::go(); a::K().go(); }""",
    "a base that is a template's": """
        const std::string n = "bow";
        template <class T> struct A { std::string n = "stern"; };
        template <class T> struct B : A<T> { void go() { motor(n); } };
        void run() { B<int>().go(); }""",
    "a base that is none of a template's": """
        const std::string n = "stern";
        template <class T> struct A { std::string n = "bow"; };
        template <class T> struct B : A<int> { void go() { motor(n); } };
        void run() { B<int>().go(); }""",
}
UNSURE = {
    "a constructor's list": """
        struct A { const std::string n = "bow"; A() : n("stern") {} void go() { motor(n); } };
        void run() { A().go(); }""",
    "a constructor's list that stands outside": """
        template <class T> struct A { A(); const std::string n = "bow"; void go() { motor(n); } };
        template <class T> A<T>::A() : n("stern") {}
        void run() { A<int>().go(); }""",
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
}
LOCALS = [
    "std::string& r{n}; r = other;",
    "std::string& r(n); r = other;",
    "auto&& r = n; r = other;",
    "for (auto& one : all) one = other;",
    "for (auto& one : all) one.append(other);",
    "for (auto& one : all) { auto& same = one; same = other; }",
    "for (std::string& one : all) { one[0] = 's'; }",
    "*std::addressof(n) = other;",
    "std::tie(n, all[0]) = std::make_tuple(other, other);",
    "std::pair<std::string&, int> pair(n, 1); pair.first = other;",
    "std::tuple<std::string&> one{n}; std::get<0>(one) = other;",
    "std::reference_wrapper<std::string> one(n); one.get() = other;",
    "(n) = other; (all[0]) = other;",
    "(flag() ? n : n) = other;",
    "(void(), n) = other;",
    "*&n = other;",
    "n.front() = 's'; all.front() = other;",
    "n.back() = 's'; all.back() = other;",
    "n.at(0) = 's'; all.at(0) = other;",
    "n.data()[0] = 's'; all.data()[0] = other;",
    "*n.begin() = 's'; *all.begin() = other;",
    "char* p = n.data(); *p = 's'; auto* q = all.data(); *q = other;",
    "auto p = n.data(); *p = 's'; auto q = all.begin(); *q = other;",
    "std::istringstream in(other); in >> n >> all[0];",
    "std::istringstream in(other); std::getline(in, n); all.assign(1, n);",
    "std::copy_n(other.begin(), 3, n.begin()); std::copy_n(&other, 1, all.begin());",
    "std::reverse(n.begin(), n.end()); all.clear(); all.push_back(n);",
    "std::fill(n.begin(), n.end(), 's'); std::fill(begin(all), end(all), other);",
    "std::transform(n.begin(), n.end(), n.begin(), ::toupper); all = {n};",
    "std::string moved = std::move(n); auto rest = std::move(all); n += 'x'; all = {n};",
    "std::string m{std::move(n)}; n += 'x'; all.resize(2);",
    "std::swap(n, other); std::swap(all[0], n);",
    "other.swap(n); std::vector<std::string> more{n}; more.swap(all);",
    "std::exchange(n, other); std::exchange(all, {other});",
    "auto set = [&r = n, &s = all] { r = other; s = {r}; }; set();",
    "auto set = [&] { n = other; all = {n}; }; set();",
    "auto set = [](auto& r) { r = {}; }; std::ref(n).get() = other; set(std::ref(all).get());",
    "n += other; all.emplace_back(other);",
    "n.insert(0, other); all.insert(all.begin(), other);",
    "auto& m = all; m.push_back(other); m[0] = other; n.pop_back();",
    "std::fill_n(std::back_inserter(all), 1, other); std::fill_n(back_inserter(n), 1, 's');",
    '*std::find(all.begin(), all.end(), "bow") = other; n.erase();',
    "auto one = std::begin(all); *one = other; n.resize(1);",
    "std::string* p = &n; *p = other; auto* q = &all; q->clear(); q->push_back(other);",
    "const_cast<std::string&>(n) = other; static_cast<std::vector<std::string>&>(all)[0] = other;",
    "struct Set { std::string& r; std::string& s; Set() : r(n), s(all[0]) { r = s = other; } } s;",
    "SET_N(other); all = {n};",
    "SET_ANY(n, other); SET_ANY(all[0], n);",
    "std::any_of(n.begin(), n.end(), [](char& c) { c = 's'; return false; });",
    "std::vector<std::reference_wrapper<std::string>> some{n}; some[0].get() = other;",
    "using namespace std; tie(n, other) = make_pair(other, n); all.front() = n;",
    "using namespace std; reverse(n.begin(), n.end()); fill(all.begin(), all.end(), n);",
    "using std::ref; ref(n).get() = other; using std::swap; swap(all[0], n);",
    "for (auto& [one, two] : {std::tie(n, all)}) { one = other; two = {one}; }",
]
"""Statements after which ``n`` and ``all`` are not ``"bow"`` and ``{"bow"}`` any more."""
LETTERS = [
    "*n = 's';",
    "*(n + 1) = 's';",
    "n[0] = 's';",
    "char* p = n; *p = 's';",
    "char* p; p = n; *p = 's';",
    "auto p = n; *p = 's';",
    "char* p = n + 1; *p = 's';",
    "auto set = [p = n] { *p = 's'; }; set();",
    "std::strcpy(n, other);",
    "strcpy(n + 1, other);",
    'snprintf(n, sizeof n, "%s", other);',
    "std::memcpy(&n[0], other, 3);",
    "std::copy_n(other, 3, n);",
    "std::copy(other, other + 3, std::begin(n));",
    "using namespace std; copy_n(other, 3, n);",
    "struct P { char* p; } p{n}; p.p[0] = 's';",
    "std::vector<char*> p{n}; p[0][0] = 's';",
    "char* p[] = {n}; p[0][0] = 's';",
    "std::make_pair(n, 1).first[0] = 's';",
    "auto give = [&] { return n; }; give()[0] = 's';",
    "char (&r)[9] = n; r[0] = 's';",
    "void* p = n; *(char*) p = 's';",
    "std::istringstream in(other); in.read(n, 3);",
    "std::istringstream in(other); in.getline(n, 4);",
    "std::string(other).copy(n, 3);",
    "((char*) n)[0] = 's';",
    "static_cast<char*>(n)[0] = 's';",
    "for (auto& one : n) one = one ? 's' : one;",
    'std::sscanf(other, "%3s", n);',
]
"""Statements after which the letters ``n`` are not ``"bow"`` any more."""
VIEWS = ["n.remove_suffix(1);", "n.remove_prefix(1);", "n = n.substr(1);", "n.swap(other);"]


_LISTED = """
{}
static std::string n = "bow", other = "stern";
static std::vector<std::string> all{{"bow"}};
void run() {{
  {}
  motor(n);
  for (const auto& one : all) motor(one);
}}
"""
_ONE = """
void run() {{
  {} n{} = "bow", {}other = "stern";
  {}
  motor(std::string(n));
}}
"""


def changing() -> dict[str, str]:
    """Return the programs that change what they look up."""
    macros = {"SET_N": "#define SET_N(x) n = x\n", "SET_ANY": "#define SET_ANY(x, y) x = y\n"}
    return {
        **{one: _LISTED.format(macros.get(one.split("(")[0], ""), one) for one in LOCALS},
        **{f"letters: {one}": _ONE.format("char", "[9]", "*", one) for one in LETTERS},
        **{f"view: {one}": _ONE.format("std::string_view", "", "", one) for one in VIEWS},
    }
