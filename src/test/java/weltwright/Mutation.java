package weltwright;

import java.util.Arrays;
import java.util.Random;

/** What can happen to a file on its way: single bits, stretches and lengths that are wrong, its beginning above all. */
public final class Mutation {
    private static final int HEADER = 700;

    private Mutation() {}

    /** The same bytes with one to three things wrong. */
    public static byte[] of(byte[] whole, Random random) {
        byte[] bytes = whole;
        for (int n = 1 + random.nextInt(3); n > 0; n--) {
            bytes = once(bytes, random);
        }
        return bytes;
    }

    private static byte[] once(byte[] bytes, Random random) {
        byte[] changed = bytes.clone();
        if (bytes.length < 2) {
            return changed;
        }
        int at = random.nextInt(bytes.length);
        int length = 1 + random.nextInt(Math.min(bytes.length - at, 1 << random.nextInt(12)));
        switch (random.nextInt(8)) {
            case 0, 1 -> changed[at] ^= (byte) (1 << random.nextInt(8));
            case 2 -> changed[at] = (byte) random.nextInt();
            case 3 -> changed[random.nextInt(Math.min(bytes.length, HEADER))] = (byte) random.nextInt();
            case 4 -> Arrays.fill(changed, at, at + length, (byte) (random.nextBoolean() ? 0 : 0xFF));
            case 5 -> System.arraycopy(bytes, random.nextInt(bytes.length - length + 1), changed, at, length);
            case 6 -> changed = Arrays.copyOf(bytes, at);
            default -> {
                // A stretch is missing, or there twice.
                boolean missing = random.nextBoolean();
                changed = new byte[missing ? bytes.length - length : bytes.length + length];
                System.arraycopy(bytes, 0, changed, 0, missing ? at : at + length);
                int from = missing ? at + length : at;
                System.arraycopy(bytes, from, changed, missing ? at : at + length, bytes.length - from);
            }
        }
        return changed;
    }
}
