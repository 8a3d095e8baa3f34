package tideless.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;

class Sha256Test {
    private static String hex(byte[]... pieces) {
        Sha256 sha = new Sha256();
        for (byte[] piece : pieces) {
            sha.update(piece);
        }
        return sha.hex();
    }

    /** NIST (2015), FIPS PUB 180-4, examples: the message "abc" and the one of 448 bits. */
    @Test
    void agrees_with_the_worked_examples_of_the_standard() {
        assertEquals(
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
                hex("abc".getBytes(StandardCharsets.US_ASCII)));
        assertEquals(
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
                hex(
                        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq"
                                .getBytes(StandardCharsets.US_ASCII)));
    }

    /** Every length around one, two and three blocks, in one piece and in two. */
    @Test
    void agrees_with_the_platforms_own_at_every_length() throws NoSuchAlgorithmException {
        Random random = new Random(20261126);
        for (int length = 0; length < 200; length++) {
            byte[] bytes = new byte[length];
            random.nextBytes(bytes);
            String expected =
                    HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
            int cut = length / 3;
            assertEquals(expected, hex(bytes), "length " + length);
            assertEquals(
                    expected,
                    hex(Arrays.copyOfRange(bytes, 0, cut), Arrays.copyOfRange(bytes, cut, length)));
        }
    }
}
