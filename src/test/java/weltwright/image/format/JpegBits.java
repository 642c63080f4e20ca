package weltwright.image.format;

import java.io.ByteArrayOutputStream;

/**
 * Bits of a JPEG scan, written as ITU-T T.81, section F.1.2.3, says: filled up with ones, a 0 behind a byte of ones.
 */
final class JpegBits {
    private JpegBits() {}

    static byte[] bytes(String bits) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        String filled = bits + "1".repeat((8 - bits.length() % 8) % 8);
        for (int at = 0; at < filled.length(); at += 8) {
            int next = Integer.parseInt(filled.substring(at, at + 8), 2);
            bytes.write(next);
            if (next == 0xFF) {
                bytes.write(0);
            }
        }
        return bytes.toByteArray();
    }

    static JpegBitReader reader(String bits) {
        byte[] bytes = bytes(bits);
        return new JpegBitReader(bytes, 0, bytes.length);
    }
}
