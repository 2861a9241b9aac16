"""The library called from Python inside an office program: every function of ``functions.json``, with plain values.

Texts go in and come out as ``str``; what a function writes to its outputs is returned. No rule of the trade is stated here.
"""

import ctypes
import json
import os
import sys

UNITS_PER_INCH = 40640
"""A length of the library is a whole number of these units."""

KINDS = {
    "double": ctypes.c_double,
    "int32_t": ctypes.c_int32,
    "int64_t": ctypes.c_int64,
    "const char*": ctypes.c_char_p,
    "char*": ctypes.c_void_p,
    "double*": ctypes.POINTER(ctypes.c_double),
    "int32_t*": ctypes.POINTER(ctypes.c_int32),
    "int64_t*": ctypes.POINTER(ctypes.c_int64),
}
OUTPUTS = {"double*": ctypes.c_double, "int32_t*": ctypes.c_int32, "int64_t*": ctypes.c_int64}
WHOLE = {"int32_t": 31, "int64_t": 63}


def method_name(function):
    """``edgenail_wall_sheets`` as ``edgenailWallSheets``: the name in a cell."""
    first, *rest = function.split("_")
    return first + "".join(word.capitalize() for word in rest)


def results(function):
    """How many cells the answer of a function for cells fills."""
    # The size of a text is not one of them.
    kinds = [kind for kind, _ in function["parameters"]]
    return sum(kind in OUTPUTS for kind in kinds)


class Refused(Exception):
    """The library refused a call; ``status`` is its number, ``entries`` what was wrong: (field, wall, message)."""

    def __init__(self, status, entries):
        lines = [f"{path}: {message}" if path else message for path, _, message in entries]
        super().__init__("\n".join(lines) or f"status {status}")
        self.status = status
        self.entries = entries


class Library:
    """The library at ``path``, or the one that lies beside this file."""

    def __init__(self, path=None):
        folder = os.path.dirname(os.path.abspath(__file__))
        names = {"win32": "edgenail.dll", "darwin": "libedgenail.dylib"}
        self._library = ctypes.CDLL(path or os.path.join(folder, names.get(sys.platform, "libedgenail.so")))
        with open(os.path.join(folder, "functions.json"), encoding="utf-8") as file:
            table = json.load(file)
        self.constants = table["constants"]
        self.functions = {function["name"]: function for function in table["functions"]}
        for name, function in self.functions.items():
            entry = getattr(self._library, name)
            entry.restype = {"void": None, "int64_t": ctypes.c_int64}.get(function["returns"], ctypes.c_int32)
            entry.argtypes = [KINDS.get(kind, ctypes.c_void_p) for kind, _ in function["parameters"]]

    def call(self, name, *inputs):
        """Calls a function with its inputs in order, and returns its outputs as a list; a text comes first.

        Raises ``Refused`` with what the library says, ``TypeError`` for an input of another kind.
        """
        parameters = self.functions[name]["parameters"]
        given = iter(inputs)
        arguments = []
        outputs = []
        text_at = None
        skip = 0
        for place, (kind, parameter) in enumerate(parameters):
            if skip > 0:
                skip -= 1
            elif kind == "const char*":
                text = _text(next(given), parameter)
                arguments += [text, len(text)]
                skip = 1
            elif kind == "char*":
                text_at = place
                needed = ctypes.c_int64()
                arguments += [None, 0, ctypes.byref(needed)]
                skip = 2
            elif kind in OUTPUTS:
                outputs.append(OUTPUTS[kind]())
                arguments.append(ctypes.byref(outputs[-1]))
            elif kind.endswith("**"):
                outputs.append(ctypes.c_void_p())
                arguments.append(ctypes.byref(outputs[-1]))
            elif "struct" in kind:
                arguments.append(next(given))
            else:
                arguments.append(_number(next(given), kind, parameter))
        entry = getattr(self._library, name)
        status = entry(*arguments)
        results = []
        if text_at is not None:
            if status == self.constants["EDGENAIL_STATUS_BUFFER_TOO_SMALL"]:
                buffer = ctypes.create_string_buffer(needed.value)
                arguments[text_at] = ctypes.cast(buffer, ctypes.c_void_p)
                arguments[text_at + 1] = needed.value
                status = entry(*arguments)
                results = [buffer.raw[: needed.value].decode("utf-8")]
            else:
                results = [""]
        if self.functions[name]["returns"] == "int32_t" and status != 0:
            raise Refused(status, self._entries())
        return results + [output.value for output in outputs]

    def _entries(self):
        count = self._library.edgenail_error_count()
        fields = [self.constants[f"EDGENAIL_ERROR_FIELD_{field}"] for field in ("PATH", "WALL", "MESSAGE")]
        return [tuple(self._error_text(entry, field) for field in fields) for entry in range(count)]

    def _error_text(self, entry, field):
        read = self._library.edgenail_error_text
        needed = ctypes.c_int64()
        read(entry, field, None, 0, ctypes.byref(needed))
        buffer = ctypes.create_string_buffer(max(needed.value, 1))
        read(entry, field, ctypes.cast(buffer, ctypes.c_void_p), needed.value, ctypes.byref(needed))
        return buffer.raw[: needed.value].decode("utf-8")


def _text(value, parameter):
    if not isinstance(value, str):
        raise TypeError(f"{parameter}: a text is needed")
    try:
        return value.encode("utf-8")
    except UnicodeEncodeError:
        raise TypeError(f"{parameter}: the text is not Unicode: a surrogate stands alone") from None


def _number(value, kind, parameter):
    if isinstance(value, str) or value is None:
        raise TypeError(f"{parameter}: a number is needed")
    if kind not in WHOLE:
        return float(value)
    # A cell holds every number as a double.
    if value != int(value) or abs(value) >= 2 ** WHOLE[kind]:
        raise TypeError(f"{parameter}: a whole number is needed")
    return int(value)
