"""What the C++ library does with a text or a list that it is given: only reads it, or more.

Names are those of ISO C++20, final draft N4861, of C, and of the libraries of small boards.
"""

from __future__ import annotations

READING_METHODS = frozenset(
    {"c_str", "capacity", "cbegin", "cend", "compare", "contains", "copy", "count", "crbegin"}
    | {
        "crend",
        "empty",
        "ends_with",
        "reserve",
        "shrink_to_fit",
        "find",
        "find_first_not_of",
        "find_first_of",
    }
    | {"find_last_not_of", "find_last_of", "has_value", "length", "max_size", "rfind", "size"}
    | {"starts_with", "str", "substr", "view"}
    | {"charAt", "compareTo", "endsWith", "equals", "equalsIgnoreCase", "getBytes", "indexOf"}
    | {"isEmpty", "lastIndexOf", "startsWith", "substring", "toCharArray", "toDouble", "toFloat"}
    | {"toInt"}
)
"""Methods that only read what they are called on; from ``charAt`` on, those of small boards."""
ELEMENT_METHODS = frozenset({"at", "back", "front", "value"})
"""Methods that give an element itself."""
INSIDE_METHODS = frozenset({"begin", "data", "end", "rbegin", "rend"})
"""Methods that give what leads to the elements."""
FILLING_METHODS = frozenset(
    {"copy", "getBytes", "getline", "merge", "readBytes", "readBytesUntil", "readsome", "splice"}
    | {"swap", "toCharArray"}
)
"""Methods that change what they are given."""
FILLING_LETTERS = frozenset({"get", "read"})
"""Methods that fill an array of letters, of which the next argument tells the length."""

CALLING = frozenset({"for_each", "transform"})
"""Functions of ``std::`` that give each element to another function, of which that may tell."""
READING_ARGUMENTS = frozenset({"append", "assign", "insert", "replace"})
"""Methods that copy what the iterators lead to that they are given."""
SOURCES = {
    **dict.fromkeys(("copy", "copy_if", "copy_n", "partial_sort_copy", "partial_sum"), 2),
    **dict.fromkeys(("remove_copy", "remove_copy_if", "replace_copy", "replace_copy_if"), 2),
    **dict.fromkeys(("reverse_copy", "transform", "unique_copy"), 2),
    **dict.fromkeys(("merge", "set_difference", "set_intersection", "set_union"), 4),
}
"""Functions of ``std::`` that fill what comes behind so many arguments, which they only read."""
READING_FUNCTIONS = frozenset(
    {
        "accumulate",
        "advance",
        "all_of",
        "any_of",
        "as_const",
        "async",
        "bind",
        "binary_search",
        "cbegin",
    }
    | {"cend", "count", "count_if", "cref", "distance", "empty", "equal", "for_each", "format"}
    | {
        "fprintf",
        "fputs",
        "hash",
        "includes",
        "invalid_argument",
        "is_sorted",
        "logic_error",
        "make_pair",
    }
    | {"make_shared", "make_tuple", "make_unique", "max", "min", "mismatch", "none_of"}
    | {
        "out_of_range",
        "path",
        "print",
        "printf",
        "println",
        "puts",
        "quoted",
        "regex",
        "regex_match",
    }
    | {"regex_search", "runtime_error"}
    | {"search", "size", "ssize", "stod", "stof", "stoi", "stol", "stoul", "strcmp", "strlen"}
    | {"strncmp", "thread", "to_string"}
)
"""Functions of ``std::`` and of C that only read what they are given, and types that copy it."""
VALUE_TYPES = frozenset(
    {"any", "array", "basic_string", "basic_string_view", "deque", "filebuf", "fstream"}
    | {"ifstream", "initializer_list", "istringstream", "list", "map", "multimap", "multiset"}
    | {"ofstream", "optional", "ostringstream", "pair", "set", "shared_ptr", "string"}
    | {"string_view", "stringstream", "tuple", "u16string", "u32string", "u8string"}
    | {"unique_ptr", "unordered_map", "unordered_set", "variant", "vector", "wstring"}
    | {"wstring_view"}
)
"""Types of ``std::`` that copy what they are made of, or can only read it."""
LISTS = frozenset({"array", "deque", "initializer_list", "list", "set", "vector"})
"""Those of them that hold several of one type."""
SHARING_TYPES = frozenset(
    {"any", "array", "initializer_list", "optional", "pair", "shared_ptr", "tuple", "unique_ptr"}
    | {"variant"}
)
"""Those of them that keep a pointer or an iterator as it is."""
PASSING_FUNCTIONS = frozenset(
    {"begin", "data", "end", "find", "find_if", "find_if_not", "get", "lower_bound"}
    | {"max_element", "min_element", "next", "prev", "rbegin", "rend", "upper_bound"}
)
"""Functions of ``std::`` that give what leads into what they are given."""
PAIRING_FUNCTIONS = frozenset({"make_pair", "make_tuple"})
"""Functions of ``std::`` that copy what they are given, but for arrays."""
VIEWS = frozenset({"reference_wrapper", "span"})
"""Types that are another name of what they are made of, within others too."""
SAME_VALUE = frozenset({"as_const", "move"})
"""Functions of ``std::`` that give what they are given."""
SMART_POINTERS = frozenset({"optional", "shared_ptr", "unique_ptr"})
"""Types of ``std::`` through which the members of something are reached."""
SMART_MAKERS = frozenset({"make_shared", "make_unique"})
ITERATORS = frozenset({"iterator", "reverse_iterator"})
"""Types of the standard library's lists that lead to their elements."""
CASTS = frozenset({"const_cast", "dynamic_cast", "reinterpret_cast", "static_cast"})

FILLING_FIRST = frozenset(
    {"dtostrf", "fgets", "fread", "gets", "itoa", "ltoa", "memcpy", "memcpy_P", "memcpy_s"}
    | {"memmove", "memset", "snprintf", "snprintf_P", "sprintf", "sprintf_P", "sprintf_s"}
    | {"strcat", "strcat_P", "strcat_s", "strcpy", "strcpy_P", "strcpy_s", "strlcat", "strlcpy"}
    | {"strlwr", "strncat", "strncpy", "strrev", "strtok", "strupr", "vsnprintf", "vsprintf"}
)
"""Functions of C that change their first argument, perhaps through ``std::``."""
FILLING = frozenset(
    {"addressof", "back_inserter", "exchange", "forward", "front_inserter", "fscanf", "getline"}
    | {"inserter", "iter_swap", "ref", "scanf", "sort", "sscanf", "swap", "tie"}
)
"""Functions that change what they are given or let others do so, known without ``std::`` too."""
FILLING_AT = frozenset(
    {"copy", "copy_backward", "copy_if", "copy_n", "fill", "fill_n", "generate", "iota", "merge"}
    | {"partial_sort_copy", "read", "replace_copy", "reverse", "rotate", "transform"}
)
"""Functions that change what a pointer leads to: an array is one to them."""
MOVING = "move"

KNOWN = READING_FUNCTIONS | VALUE_TYPES | PASSING_FUNCTIONS | FILLING | {MOVING}
"""Names that are taken for the standard library's without ``std::``, where a file opens that."""
