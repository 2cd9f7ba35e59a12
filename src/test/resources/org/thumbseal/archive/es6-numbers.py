"""SHA-256 of the first N lines of the ES6 number sequence, as a script writes the numbers.

es6-numbers.py SCRIPT STATIC-NUMBERS N; the sequence is told of in NumberVectorsTest.
"""

import hashlib
import itertools
import math
import runpy
import struct
import sys


def sequence(listed):
    yield from (int(line, 16) for line in listed)
    yield from (0x0010000000000000 + i for i in range(2000))
    block = bytes(32)
    while True:
        block = hashlib.sha256(block).digest()
        for bits in struct.unpack("<4Q", block):
            value = struct.unpack("<d", struct.pack("<Q", bits))[0]
            if value != 0 and math.isfinite(value):
                yield bits


canonical = runpy.run_path(sys.argv[1])["canonical"]
digest = hashlib.sha256()
with open(sys.argv[2], encoding="ascii") as listed:
    for bits in itertools.islice(sequence(listed), int(sys.argv[3])):
        value = struct.unpack("<d", struct.pack("<Q", bits))[0]
        digest.update(f"{bits:x},{canonical(value)}\n".encode("ascii"))
print(digest.hexdigest())
