"""Small programs whose names are what they look, each a body of a namespace: all must be told."""

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
