"""Lines and the order in which they are seen, by ICU's ubidi, for the tests of
model/scene: python3 make.py > cases.json. Only lines are kept for which FriBidi finds the
same levels: one in 600 is not, a mark behind a closing bracket. Written with ICU 72
(libicuuc.so.72) and FriBidi 1.0.8 (libfribidi.so.0)."""

import ctypes
import json
import random

icu = ctypes.CDLL("libicuuc.so.72")
icu.ubidi_open_72.restype = ctypes.c_void_p
KEEP_BASE_COMBINING, DO_MIRRORING = 1, 2


fri = ctypes.CDLL("libfribidi.so.0")


def levels(text, base):
    n = len(text)
    line = (ctypes.c_uint32 * n)(*map(ord, text))
    types, brackets, out = (ctypes.c_uint32 * n)(), (ctypes.c_uint32 * n)(), (ctypes.c_int8 * n)()
    fri.fribidi_get_bidi_types(line, n, types)
    fri.fribidi_get_bracket_types(line, n, types, brackets)
    para = ctypes.c_uint32(0x110 + base)
    fri.fribidi_get_par_embedding_levels_ex(types, brackets, n, ctypes.byref(para), out)
    # Rule L1, which FriBidi leaves to the line.
    for i in range(n - 1, -1, -1):
        if text[i] != " ":
            break
        out[i] = base
    return list(out)


def seen(text, base):
    units = text.encode("utf-16-le")
    n = len(units) // 2
    src = ctypes.create_string_buffer(units + b"\0\0")
    err = ctypes.c_int(0)
    para = ctypes.c_void_p(icu.ubidi_open_72())
    icu.ubidi_setPara_72(para, src, n, ctypes.c_ubyte(base), None, ctypes.byref(err))
    out = ctypes.create_string_buffer(2 * n + 2)
    icu.ubidi_writeReordered_72(para, out, n + 1, ctypes.c_ushort(KEEP_BASE_COMBINING | DO_MIRRORING), ctypes.byref(err))
    icu.ubidi_getLevels_72.restype = ctypes.POINTER(ctypes.c_int8)
    same = icu.ubidi_getLevels_72(para, ctypes.byref(err))[:n] == levels(text, base)
    icu.ubidi_close_72(para)
    assert err.value <= 0, err.value
    if not same:
        return None
    return out.raw[: 2 * n].decode("utf-16-le")


# Latin, Hebrew, Arabic, digits of both, what parts and ends numbers, brackets, marks,
# other neutrals.
alphabet = list("abאבגجد123٤٥.,:+-/%€$()[]{}<>«»&! ·\"") + list("    ()()אבab") + ["\u05b8", "\u0301", "\u200e", "\u200f", "½", "°"]
random.seed(9)
cases = []
for n in range(600):
    text = "".join(random.choice(alphabet) for _ in range(random.randint(1, 24)))
    base = n % 2
    if (line := seen(text, base)) is not None:
        cases.append({"base": base, "text": text, "seen": line})
print("[\n" + ",\n".join(json.dumps(c, ensure_ascii=True) for c in cases) + "\n]")
