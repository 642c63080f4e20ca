package weltwright.image;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;

/** Any bytes as the Exif data (the TIFF stream in the APP1 segment, Exif 2.32, 4.5) of a small JPEG that is sound. */
public final class ExifFuzzTarget {
    /** What a segment's length of two bytes leaves beside the length itself and the six bytes of the identifier. */
    private static final int LONGEST = 0xFFFF - 8;

    private static final byte[] JPEG = jpeg();

    private ExifFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        byte[] tiff = input.length > LONGEST ? Arrays.copyOf(input, LONGEST) : input;
        ByteBuffer file = ByteBuffer.allocate(JPEG.length + tiff.length + 10);
        file.put(JPEG, 0, 2).putShort((short) 0xFFE1).putShort((short) (tiff.length + 8));
        file.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff);
        file.put(JPEG, 2, JPEG.length - 2);
        PhotoFuzzTarget.fuzzerTestOneInput(file.array());
    }

    private static byte[] jpeg() {
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        try {
            ImageIO.write(new BufferedImage(16, 12, BufferedImage.TYPE_INT_RGB), "jpg", jpeg);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return jpeg.toByteArray();
    }
}
