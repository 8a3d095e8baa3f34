package tideless.scenario;

/**
 * SHA-256 of bytes handed in piece by piece; NIST (2015), FIPS PUB 180-4, sections 4.1.2, 5 and
 * 6.2. An own one because a browser has no {@code java.security}.
 */
final class Sha256 {
    private static final int BLOCK = 64;

    /** Section 4.2.2: first 32 bits of the fractions of the cube roots of the first 64 primes. */
    private static final int[] K = {
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4,
        0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe,
        0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f,
        0x4a7484aa, 0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7,
        0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc,
        0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b,
        0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116,
        0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7,
        0xc67178f2
    };

    /** Section 5.3.3: the same of the square roots of the first 8 primes. */
    private final int[] hash = {
        0x6a09e667,
        0xbb67ae85,
        0x3c6ef372,
        0xa54ff53a,
        0x510e527f,
        0x9b05688c,
        0x1f83d9ab,
        0x5be0cd19
    };

    private final byte[] block = new byte[BLOCK];
    private final int[] schedule = new int[64];
    private int filled;
    private long lengthBytes;

    /** Takes more bytes. */
    void update(byte[] bytes) {
        for (byte one : bytes) {
            take(one);
        }
        lengthBytes += bytes.length;
    }

    /** The hash of all that was taken, lower-case hexadecimal; nothing may be taken after it. */
    String hex() {
        take((byte) 0x80);
        while (filled != BLOCK - 8) {
            take((byte) 0);
        }
        long lengthBits = lengthBytes * 8;
        for (int shift = 56; shift >= 0; shift -= 8) {
            take((byte) (lengthBits >>> shift));
        }
        StringBuilder hex = new StringBuilder();
        for (int word : hash) {
            for (int shift = 28; shift >= 0; shift -= 4) {
                hex.append("0123456789abcdef".charAt(word >>> shift & 15));
            }
        }
        return hex.toString();
    }

    private void take(byte one) {
        block[filled++] = one;
        if (filled == BLOCK) {
            mix();
            filled = 0;
        }
    }

    private void mix() {
        int[] w = schedule;
        for (int t = 0; t < 16; t++) {
            w[t] =
                    ((block[4 * t] & 255) << 24)
                            | ((block[4 * t + 1] & 255) << 16)
                            | ((block[4 * t + 2] & 255) << 8)
                            | (block[4 * t + 3] & 255);
        }
        for (int t = 16; t < 64; t++) {
            int early = w[t - 15];
            int late = w[t - 2];
            int sigma0 = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
            int sigma1 = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
            w[t] = w[t - 16] + sigma0 + w[t - 7] + sigma1;
        }
        int[] v = hash.clone();
        for (int t = 0; t < 64; t++) {
            int sum1 = turned(v[4], 6) ^ turned(v[4], 11) ^ turned(v[4], 25);
            int choice = (v[4] & v[5]) ^ (~v[4] & v[6]);
            int first = v[7] + sum1 + choice + K[t] + w[t];
            int sum0 = turned(v[0], 2) ^ turned(v[0], 13) ^ turned(v[0], 22);
            int majority = (v[0] & v[1]) ^ (v[0] & v[2]) ^ (v[1] & v[2]);
            System.arraycopy(v, 0, v, 1, 7);
            v[4] += first;
            v[0] = first + sum0 + majority;
        }
        for (int i = 0; i < 8; i++) {
            hash[i] += v[i];
        }
    }

    private static int turned(int word, int right) {
        return word >>> right | word << (32 - right);
    }
}
