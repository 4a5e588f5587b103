"""Words of Philox4x64-10 by NumPy, for the streams of RandomStream: key = (seed, stream), counter = block number.

NumPy counts up before it makes a block, so its counter starts one below ours.
Run: /usr/bin/python3 philox.py > ../philox-numpy.json
"""

import json

import numpy as np


def words(seed, stream, count):
    before_zero = np.array([2**64 - 1] * 4, dtype=np.uint64)
    key = np.array([seed, stream], dtype=np.uint64)
    raw = np.random.Philox(key=key, counter=before_zero).random_raw(count)
    return [f"{int(word):016x}" for word in raw]


streams = [(0, 0), (20240229, 0), (20240229, 1), (2**64 - 1, 2**63 + 5)]
result = {
    "streams": [{"seed": str(s), "stream": str(n), "words": words(s, n, 11)} for s, n in streams]
}
print(json.dumps(result, indent=2))
