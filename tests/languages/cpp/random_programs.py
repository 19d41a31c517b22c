"""Programs of C++ put together at random: constants, members, lists, loops, what changes them."""

from __future__ import annotations

import random
from collections.abc import Iterator


class Maker:
    """Makes one header at random; each look-up has a line of its own."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.name = f"p{seed}"
        self.texts: list[str] = []
        self.variables: list[str] = []
        self.lists: list[str] = []
        self.vectors: set[str] = set()
        self.count = 0

    def fresh(self) -> str:
        self.count += 1
        return f"v{self.count}"

    def text(self, deep: int = 2, without: str = "") -> str:
        """Return an expression that is a text."""
        sorts = ["literal", "literal", "name", "name", "name", "sum", "choice", "element"]
        sort = self.random.choice(sorts) if deep else "literal"
        names = [name for name in self.texts if name != without]
        if sort == "sum":
            return f"std::string({self.text(deep - 1, without)}) + {self.text(deep - 1, without)}"
        if sort == "choice":
            one, other = self.text(deep - 1, without), self.text(deep - 1, without)
            return f"(flag() ? std::string({one}) : std::string({other}))"
        if sort == "element" and self.lists:
            return f"{self.random.choice(self.lists)}[0]"
        if sort == "name" and names:
            return self.random.choice(names)
        return self.random.choice(['"a"', '"b"', '"c"'])

    def values(self) -> str:
        return ", ".join(self.text() for _ in range(self.random.randint(1, 3)))

    def declared(self, before: str = "", *, name: str = "") -> str:
        """Return the declaration of a text or a list, which can be used from there on."""
        name = name or self.fresh()
        sort = self.random.choice(["plain", "const", "letters", "list", "array"])
        if sort in {"list", "array"} and name not in self.texts:
            kind, sign = "std::vector<std::string>", ""
            self.vectors.discard(name)
            if sort == "array":
                kind, sign = "const std::string", "[]"
            else:
                self.vectors.add(name)
            line = f"{before}{kind} {name}{sign}{{{self.values()}}};"
            self.lists.append(name)
            return line
        if sort == "letters":
            literal = self.random.choice(['"a"', '"b"'])
            line = f"{before}constexpr const char* {name} = {literal};"
        else:
            kind = "std::string" if sort == "plain" else "const std::string"
            value = self.text(without=name)
            form = self.random.choice(["{0} {1} = {2};", "{0} {1}(({2}));", "{0} {1}{{{2}}};"])
            line = before + form.format(kind, name, f"std::string({value})")
        if name in self.variables:
            self.variables.remove(name)
        self.variables += [name] if sort == "plain" else []
        self.texts.append(name)
        return line

    def block(self, deep: int, taken: str = "") -> Iterator[str]:
        """Yield statements; what they declare is not seen behind them, ``taken`` not hidden."""
        known = list(self.texts), list(self.variables), list(self.lists)
        mine = {taken}
        for _ in range(self.random.randint(1, 4)):
            shadowed = [name for name in known[0] if name[0] == "v" and name not in mine]
            if shadowed and self.random.random() < 0.15:
                name = self.random.choice(shadowed)
                mine.add(name)
                yield self.declared(name=name)
            else:
                yield from self.statement(deep)
        self.texts, self.variables, self.lists = known

    def statement(self, deep: int) -> Iterator[str]:
        sorts = ["look-up", "look-up", "look-up", "declared", "changed", "each", "if", "lambda"]
        sort = self.random.choice([*sorts, "through", "listed", "object"])
        if sort == "declared":
            yield self.declared()
        elif sort == "changed" and self.variables:
            yield self.changed(self.random.choice(self.variables))
        elif sort == "each" and deep:
            name, over = self.fresh(), [f"std::vector<std::string>{{{self.values()}}}", *self.lists]
            yield f"for (const auto& {name} : {self.random.choice(over)}) {{"
            self.texts.append(name)
            yield from self.block(deep - 1, name)
            self.texts.remove(name)
            yield "}"
        elif sort == "through" and self.variables:
            yield from self.through(self.random.choice(self.variables))
        elif sort == "listed" and self.lists:
            yield from self.listed(self.random.choice(self.lists))
        elif sort == "object":
            yield from self.object()
        elif sort == "if" and deep:
            yield "if (flag()) {"
            yield from self.block(deep - 1)
            yield "}"
        elif sort == "lambda" and deep:
            yield "[&] {"
            yield from self.block(deep - 1)
            yield "}();"
        else:
            yield f"motor({self.text()});"

    def changed(self, name: str) -> str:
        """Return a statement that changes a text."""
        other = self.fresh()
        forms = [
            "{0} = {1};",
            "{0} += {1};",
            "{0}.append({1});",
            "{0}[0] = 'x';",
            "std::string& {2} = {0}; {2} = {1};",
            "auto* {2} = &{0}; *{2} = {1};",
            "std::string& {2}{{{0}}}; {2} = {1};",
            "for (auto* {2} : {{&{0}}}) *{2} = {1};",
            "(flag() ? {0} : {0}) = {1};",
            "std::tie({0}) = std::make_tuple({1});",
            "{0}.front() = 'x';",
            "std::reverse({0}.begin(), {0}.end());",
            "[&, &{2} = {0}] {{ {2} += {1}; }}();",
        ]
        return self.random.choice(forms).format(name, self.text(), other)

    def through(self, name: str) -> Iterator[str]:
        """Yield statements that give a text to something which changes it or only reads it."""
        other = self.fresh()
        forms = [
            ["auto& {0} = {1};", "motor({0});"],
            ["const auto& {0} = {1};", "motor({0});"],
            ["auto* {0} = &{1};", "motor(*{0});"],
            ["auto {0} = {1}.c_str();", "motor({0});"],
            ["peek({1});"],
            ["show({1});"],
            ["pass({1});"],
            ["Keeper{{{1}}};"],
            ["auto {0} = [](std::string& s) {{ show(s); }};", "{0}({1});"],
            ["auto {0} = [](std::string& s) {{ s += 'x'; }};", "{0}({1});"],
        ]
        yield from (line.format(other, name) for line in self.random.choice(forms))

    def listed(self, name: str) -> Iterator[str]:
        """Yield statements that go through a list or change it."""
        other, is_vector = self.fresh(), name.rsplit(":", maxsplit=1)[-1] in self.vectors
        forms = [
            ["for (auto {0} = std::begin({1}); {0} != std::end({1}); ++{0}) {{",
             "motor(*{0});", "}}"],
            ["std::for_each(std::begin({1}), std::end({1}), [](const std::string& {0}) {{",
             "motor({0});", "}});"],
            ["for (int {0} = 0; {0} < std::size({1}); {0}++) {{", "motor({1}[{0}]);", "}}"],
            ["auto& {0} = {1};", "motor({0}[0]);"],
        ]  # fmt: skip
        if is_vector:
            forms += [
                ["{1}[0] = {2};"],
                ["{1}.back() = {2};"],
                ["for (auto& {0} : {1}) {0} = {2};"],
                ["for (auto {0} = {1}.begin(); {0} != {1}.end(); {0}++) *{0} = {2};"],
                ["motor({1}.at(0));", "motor({1}.front());"],
                ["std::for_each({1}.begin(), {1}.end(), [](std::string& {0}) {{ {0} += 'x'; }});"],
                ["std::vector<std::string> {0}({1}.begin(), {1}.end());", "motor({0}[0]);"],
            ]
        text = self.text()
        yield from (line.format(other, name, text) for line in self.random.choice(forms))

    def object(self) -> Iterator[str]:
        """Yield statements that make an object and ask for its member."""
        one, other, text = self.fresh(), self.fresh(), self.text()
        made = self.random.choice(
            [f"Part {one};", f"Part {one}{{}};", f"Part {one}{{{text}}};", f"auto {one} = Part();",
             f"Kin {one};", f"Kin {one}{{{{{text}}}}};", f"Lone {one};", f"Lone {one};",
             f"Lone {one}; {one}.text += 'x';", f"Part {one}; {one}.label = {text};",
             f"Part {one} = given();", f"Sure {one};", f"Sure {one}(3);"]
        )  # fmt: skip
        yield made
        member = "text" if made.startswith(("Lone", "Sure")) else "label"
        form, sign = self.random.choice(
            [("auto& {} = {};", "."), ("const auto* {} = &{};", "->"), ("auto {} = {};", ".")]
        )
        yield form.format(other, one)
        if sign == "." and not form.startswith("const") and self.random.random() < 0.2:
            yield f"{other}.{member} = {text};"
        yield f"motor({other}{sign}{member});"
        yield f"motor({one}.{member});"

    def made(self) -> str:
        """Return the header."""
        macro = f"{self.name.upper()}_NAME"
        first = [self.declared("static ") for _ in range(self.random.randint(1, 3))]
        inner = self.declared("static ")
        member, field = self.text(0), self.text(0)
        within = f"struct Names {{\n  static constexpr const char* kOne = {member};"
        name = inner.split("=")[0].split("(")[0].split("{")[0].split()[-1].removesuffix("[]")
        for known in (self.texts, self.variables, self.lists):
            known[:] = [f"inner::{one}" if one == name else one for one in known]
        self.texts += [macro, "Names::kOne", "Names().two", "called()"]
        body = ["{", *self.block(2), "}", "{", *self.block(2), "}"]
        called = self.random.choice(['"a"', macro, "Names::kOne"])
        lines = [
            *("#pragma once", f'#define {macro} "m"', f"namespace {self.name} {{", *first),
            *("namespace inner {", inner, "}", within, f"  std::string two = {field};", "};"),
            *('struct Part { std::string label = "p"; int side = 0; };', "struct Kin : Part {};"),
            *('struct Lone { std::string text = "l"; };', "inline Part given() { return {}; }"),
            *(
                'struct Sure { std::string text = "s"; int side = 0; Sure() = default;',
                "  Sure(int n) : side(n) {} };",
                'struct Keeper { Keeper(std::string& s) { s = "k"; } };',
            ),
            *(
                "inline void show(const std::string& s) { std::cerr << s; }",
                "inline void peek(std::string& s) { show(s); }",
                'inline void fill(std::string& s) { s = "f"; }',
                "inline void pass(std::string& s) { fill(s); }",
            ),
            *("std::string called();", "inline void run() {", *body, "}"),
            *(f"inline std::string called() {{ return {called}; }}", "}"),
        ]
        return "\n".join(lines) + "\n"
