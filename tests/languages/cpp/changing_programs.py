"""Small programs that change what they look up, each a body of a namespace."""

from __future__ import annotations

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
