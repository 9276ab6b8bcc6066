"""The work of the benchmarks with general-purpose numpy and scipy, written for the purpose.

Reads lines "prepare NAME ARGUMENTS" and "run" and answers each with one line that holds the result, so that the caller
can time one run as it times its own code. One thread: set OPENBLAS_NUM_THREADS=1.
"""
import sys

import numpy as np
import scipy.sparse
import scipy.sparse.linalg
import scipy.special

MU0 = 4e-7 * np.pi


def wires(half, pieces):
    """Two layers of parallel wires across each other, 0.6 m and 0.7 m deep; ends of all elements."""
    start, end = [], []
    for k in range(half):
        for p in range(pieces):
            a, b = half * p / pieces, half * (p + 1) / pieces
            start.append((a, k + 0.5, 0.6))
            end.append((b, k + 0.5, 0.6))
    for k in range(half):
        for p in range(pieces):
            a, b = half * p / pieces, half * (p + 1) / pieces
            start.append((k + 0.5, a, 0.7))
            end.append((k + 0.5, b, 0.7))
    return np.array(start), np.array(end)


def images(k, h, negligible=1e-12):
    """Offset and weight of the images of a source in the upper of two layers, seen from that layer, by sign pattern."""
    power, n = 1.0, 0
    found = [(0.0, 1.0, -1), (0.0, 1.0, 1)]
    while True:
        n += 1
        power *= k
        if abs(power) < negligible:
            return found
        # z + d + 2nh, 2nh - (z + d), and 2nh +- (z - d)
        found += [(2 * n * h, power, 1), (2 * n * h, power, 2), (2 * n * h, power, -1), (2 * n * h, power, -2)]


NODES, WEIGHTS = np.polynomial.legendre.leggauss(4)
NODES, WEIGHTS = (NODES + 1) / 2, WEIGHTS / 2


def depth_of(sign, b, z):
    """Depth at which the image of depth z stands for an observer: offset b and sign pattern."""
    return {-1: z + b, 1: -z - b, 2: b - z, -2: z - b}[sign]


class Electrode:
    def __init__(self, half, pieces, tuned):
        self.start, self.end = wires(half, pieces)
        self.tuned = tuned
        self.radius, self.h = 0.005, 2.0
        rho1, rho2 = 100.0, 1000.0
        self.strength = rho1 / (4 * np.pi)
        self.images = images((rho2 - rho1) / (rho2 + rho1), self.h)

    def line(self, x, y, z, s, e, z1, z2, length):
        r1 = np.sqrt((x - s[..., 0]) ** 2 + (y - s[..., 1]) ** 2 + (z - z1) ** 2 + self.radius ** 2)
        r2 = np.sqrt((x - e[..., 0]) ** 2 + (y - e[..., 1]) ** 2 + (z - z2) ** 2 + self.radius ** 2)
        return np.log((r1 + r2 + length) / (r1 + r2 - length)) / length

    def run(self):
        matrix = self.vectorised() if self.tuned else self.plain()
        return 1 / np.linalg.solve(matrix, np.ones(len(matrix))).sum()

    def vectorised(self):
        """All pairs at once, image by image: closed line integral near, centre to centre far."""
        s, e = self.start, self.end
        n = len(s)
        length = np.linalg.norm(e - s, axis=1)
        middle = (s + e) / 2
        dx = middle[:, None, 0] - middle[None, :, 0]
        dy = middle[:, None, 1] - middle[None, :, 1]
        flat = dx * dx + dy * dy + self.radius ** 2
        depth = middle[:, 2]
        total = np.zeros((n, n))
        far = 8 * length.max()
        work = np.empty((n, n))
        for b, weight, sign in self.images:
            if b < far:
                z1, z2 = depth_of(sign, b, s[:, 2]), depth_of(sign, b, e[:, 2])
                for t, w in zip(NODES, WEIGHTS):
                    p = s + t * (e - s)
                    total += weight * w * self.line(
                        p[:, None, 0], p[:, None, 1], p[:, None, 2], s[None], e[None], z1[None], z2[None], length[None])
            else:
                np.subtract(depth[:, None], depth_of(sign, b, depth)[None, :], out=work)
                np.multiply(work, work, out=work)
                np.add(work, flat, out=work)
                np.sqrt(work, out=work)
                np.divide(weight, work, out=work)
                total += work
        return self.strength * (total + total.T) / 2

    def plain(self):
        """Pair by pair, all images of a pair at once."""
        s, e = self.start, self.end
        n = len(s)
        length = np.linalg.norm(e - s, axis=1)
        b = np.array([i[0] for i in self.images])
        weight = np.array([i[1] for i in self.images])
        sign = np.array([i[2] for i in self.images])
        # Depth of the image is up * z + shift.
        up = np.where(sign < 0, 1.0, -1.0)
        shift = np.where((sign == -1) | (sign == 2), b, -b)
        matrix = np.empty((n, n))
        for i in range(n):
            p = s[i] + NODES[:, None] * (e[i] - s[i])
            for j in range(i + 1):
                z1 = up * s[j, 2] + shift
                z2 = up * e[j, 2] + shift
                r = self.line(p[:, 0, None], p[:, 1, None], p[:, 2, None], s[j], e[j], z1, z2, length[j])
                matrix[i, j] = matrix[j, i] = self.strength * (WEIGHTS @ r @ weight)
        return matrix


class Ladder:
    def __init__(self, spans):
        self.n = int(spans)

    def run(self):
        n = self.n
        y = 1 / (0.02 + 0.03j)
        g = 1 / 40.0
        main = np.full(n, 2 * y + g)
        main[-1] = y + g
        side = np.full(n - 1, -y)
        matrix = scipy.sparse.diags([side, main, side], [-1, 0, 1], format="csc")
        right = np.zeros(n, complex)
        right[0] = y
        v = scipy.sparse.linalg.splu(matrix).solve(right)
        return (1 / (y * (1 - v[0]))).real


class Sweep:
    """Nodal solution of coupled segments with skin effect at many frequencies, all frequencies in one call of LAPACK."""

    def __init__(self, path):
        with open(path) as lines:
            rows = [list(map(float, line.split())) for line in lines]
        head, rows = rows[0], rows[1:]
        m = int(head[0])
        self.ends = np.array([rows[k][:2] for k in range(m)], int)
        self.radius = np.array([rows[k][2] for k in range(m)])
        self.length = np.array([rows[k][3] for k in range(m)])
        self.inductance = np.array(rows[m : 2 * m])
        self.extra = rows[2 * m :]
        self.nodes = 1 + int(self.ends.max())
        self.f = np.logspace(1, 7, 200)

    def run(self):
        w = 2 * np.pi * self.f
        rho = 1.7241e-8
        kinds, which = np.unique(self.radius, return_inverse=True)
        k = np.sqrt(1j * w[:, None] * MU0 / rho)
        x = k * kinds[None]
        inner = rho * k / (2 * np.pi * kinds[None]) * scipy.special.ive(0, x) / scipy.special.ive(1, x)
        z = 1j * w[:, None, None] * self.inductance[None]
        m = len(self.radius)
        z[:, np.arange(m), np.arange(m)] += inner[:, which] * self.length[None]
        incidence = np.zeros((self.nodes, m))
        incidence[self.ends[:, 0], np.arange(m)] += 1
        incidence[self.ends[:, 1], np.arange(m)] -= 1
        y = incidence @ np.linalg.inv(z) @ incidence.T
        for a, b, g in self.extra:
            a, b = int(a), int(b)
            y[:, a, a] += g
            if b >= 0:
                y[:, b, b] += g
                y[:, a, b] -= g
                y[:, b, a] -= g
        right = np.zeros((len(w), self.nodes, 1), complex)
        right[:, 0] = 1
        v = np.linalg.solve(y, right)
        return abs(v[-1, 0, 0])


def main():
    job = None
    for line in sys.stdin:
        word = line.split()
        if word[0] == "prepare":
            kind, rest = word[1], word[2:]
            if kind == "electrode":
                job = Electrode(int(rest[0]), int(rest[1]), rest[2] == "tuned")
            elif kind == "ladder":
                job = Ladder(rest[0])
            else:
                job = Sweep(rest[0])
            print("ready", flush=True)
        else:
            print(repr(float(job.run())), flush=True)


if __name__ == "__main__":
    main()
