#!/usr/bin/python3
"""Checks the seal of one result, and the capture beside it.

    verify-with-python.py RESULT.json KEY.jwk

KEY.jwk is the public key of whoever sealed it ("thumbseal key show"); take it from a person you
trust, never from the result. Exit code 0: the seal is good and by this key; 1: it is not;
2: wrong usage, or not readable.
Needs jwcrypto: Debian and Ubuntu have it as python3-jwcrypto.
"""

import hashlib
import json
import re
import sys
from decimal import Decimal
from pathlib import Path

from jwcrypto import jwk, jws
from jwcrypto.common import JWException, base64url_encode

# The last of 86 characters carries two bits of a signature; only these four leave the rest zero.
SIGNATURE = re.compile(r"([A-Za-z0-9_-]+)\.\.([A-Za-z0-9_-]{85}[AQgw])")


class Broken(Exception):
    """The document, or its capture, is not what was sealed with this key."""


def members(pairs):
    """An object in which each name occurs once: of two, one program reads this, another that."""
    names = dict(pairs)
    if len(names) != len(pairs):
        raise Broken("a name occurs twice in an object")
    return names


def no_number(text):
    raise ValueError(text + " is no JSON")


def read(path):
    """Every number as an IEEE 754 double, as RFC 8785 has them."""
    document = json.loads(
        path.read_bytes().decode("utf-8"),
        object_pairs_hook=members,
        parse_int=float,
        parse_constant=no_number,
    )
    if not isinstance(document, dict):
        raise ValueError("not a JSON object")
    return document


def number(value):
    """Shortest digits, written as ECMA-262 Number::toString writes them."""
    if value == 0:
        return "0"
    if value < 0:
        return "-" + number(-value)
    if value == float("inf"):
        raise ValueError("a number is too large")
    parts = Decimal(repr(value)).as_tuple()
    point = len(parts.digits) + parts.exponent
    digits = "".join(map(str, parts.digits)).rstrip("0")
    if len(digits) <= point <= 21:
        return digits.ljust(point, "0")
    if 0 < point <= 21:
        return digits[:point] + "." + digits[point:]
    if -6 < point <= 0:
        return "0." + "0" * -point + digits
    fraction = "." + digits[1:] if len(digits) > 1 else ""
    return f"{digits[0]}{fraction}e{point - 1:+d}"


def canonical(value):
    """RFC 8785: members in the order of their UTF-16 units, no space, one spelling of each value."""
    if isinstance(value, dict):
        names = sorted(value, key=lambda name: name.encode("utf-16-be"))
        return "{" + ",".join(canonical(n) + ":" + canonical(value[n]) for n in names) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canonical, value)) + "]"
    if isinstance(value, float):
        return number(value)
    return json.dumps(value, ensure_ascii=False)


def check_seal(document, key):
    parts = SIGNATURE.fullmatch(str(document.get("signature")))
    if not parts:
        raise Broken("no signature of the one form that is taken")
    # Nothing in a header is obeyed: it has to be this very one, the algorithm and the key.
    expected = {"alg": "EdDSA", "kid": key.thumbprint()}
    header = base64url_encode(canonical(expected))
    if parts[1] != header:
        raise Broken("sealed with another key, or not with EdDSA")
    signed = {name: value for name, value in document.items() if name != "signature"}
    content = base64url_encode(canonical(signed).encode("utf-8"))
    token = jws.JWS()
    token.allowed_algs = ["EdDSA"]
    token.deserialize(f"{header}.{content}.{parts[2]}", key)


def check_capture(document, folder):
    """The recording lies beside the document, if it came along."""
    evidence = document.get("evidence")
    if not isinstance(evidence, dict):
        return ""
    name = str(evidence.get("capture"))
    if name != Path(name).name or not (folder / name).is_file():
        return "; its capture is not here"
    if hashlib.sha256((folder / name).read_bytes()).hexdigest() != evidence.get("sha256"):
        raise Broken("the capture is not the one that was graded")
    return "; the capture is the one that was graded"


def read_key(path):
    key = jwk.JWK.from_json(path.read_text("utf-8"))
    public = json.loads(key.export_public())
    if public.get("kty") != "OKP" or public.get("crv") != "Ed25519" or key.has_private:
        raise ValueError("not a public Ed25519 key")
    return key


def answer(result, key_file):
    try:
        key = read_key(key_file)
        document = read(result)
        check_seal(document, key)
        capture = check_capture(document, result.parent)
    except (Broken, jws.InvalidJWSSignature) as trouble:
        reason = trouble if isinstance(trouble, Broken) else "the content is not what was signed"
        return 1, f"{result}: broken seal: {reason}"
    except (OSError, ValueError, RecursionError, JWException) as trouble:
        return 2, f"{result} or {key_file}: cannot be read ({type(trouble).__name__})"
    return 0, f"{result}: good seal by the key {key.thumbprint()}{capture}"


def main(arguments):
    if len(arguments) != 2:
        print(f"usage: {sys.argv[0]} RESULT.json KEY.jwk", file=sys.stderr)
        return 2
    code, line = answer(Path(arguments[0]), Path(arguments[1]))
    print(line, file=sys.stderr if code == 2 else sys.stdout)
    return code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
