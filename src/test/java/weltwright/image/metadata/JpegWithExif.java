package weltwright.image.metadata;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.TreeMap;
import javax.imageio.ImageIO;

/**
 * A JPEG file with Exif tags of our choosing, laid out by hand: an APP1 segment ("Exif", then a big-endian TIFF header,
 * a main directory and an Exif directory) put in after the start of the image. Exif 2.32, sections 4.5 to 4.7.
 */
public final class JpegWithExif {
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int EXIF_DIRECTORY = 0x8769;

    private final TreeMap<Integer, int[]> main = new TreeMap<>();
    private final TreeMap<Integer, int[]> sub = new TreeMap<>();
    private final TreeMap<Integer, String> words = new TreeMap<>();

    /** A tag of the main directory. */
    public JpegWithExif main(int tag, int type, int value) {
        main.put(tag, new int[] {type, value});
        return this;
    }

    /** A tag of the main directory that is a text of more than three letters, none of them with accents. */
    public JpegWithExif words(int tag, String text) {
        words.put(tag, text);
        return this;
    }

    /** A tag of the Exif directory. */
    public JpegWithExif sub(int tag, int type, int value) {
        sub.put(tag, new int[] {type, value});
        return this;
    }

    public byte[] bytes(BufferedImage picture) throws IOException {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(picture, "jpg", plain);
        return bytes(plain.toByteArray());
    }

    /** @param jpeg a file without Exif tags */
    public byte[] bytes(byte[] jpeg) {
        byte[] tiff = tiff();
        ByteBuffer file = ByteBuffer.allocate(jpeg.length + tiff.length + 10);
        file.put(jpeg, 0, 2);
        file.putShort((short) 0xFFE1).putShort((short) (tiff.length + 8));
        file.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII)).put(tiff);
        file.put(jpeg, 2, jpeg.length - 2);
        return file.array();
    }

    private byte[] tiff() {
        int subAt = 8 + 2 + 12 * (main.size() + words.size() + 1) + 4;
        int rationalsAt = subAt + 2 + 12 * sub.size() + 4;
        int wordsAt = rationalsAt + 8 * sub.size();
        TreeMap<Integer, int[]> first = new TreeMap<>(main);
        first.put(EXIF_DIRECTORY, new int[] {LONG, subAt});
        int end = wordsAt;
        for (var text : words.entrySet()) {
            first.put(text.getKey(), new int[] {ASCII, end, text.getValue().length() + 1});
            end += text.getValue().length() + 1;
        }
        ByteBuffer tiff = ByteBuffer.allocate(end);
        tiff.putShort((short) 0x4D4D).putShort((short) 42).putInt(8);
        directory(tiff, first, rationalsAt);
        directory(tiff, sub, rationalsAt);
        tiff.position(wordsAt);
        words.values().forEach(text -> tiff.put((text + "\0").getBytes(StandardCharsets.US_ASCII)));
        return tiff.array();
    }

    private static void directory(ByteBuffer tiff, TreeMap<Integer, int[]> tags, int rationalsAt) {
        tiff.putShort((short) tags.size());
        int nextRational = rationalsAt;
        for (var tag : tags.entrySet()) {
            int type = tag.getValue()[0];
            int value = tag.getValue()[1];
            int count = type == ASCII ? tag.getValue()[2] : 1;
            tiff.putShort(tag.getKey().shortValue()).putShort((short) type).putInt(count);
            switch (type) {
                case SHORT -> tiff.putShort((short) value).putShort((short) 0);
                case ASCII, LONG -> tiff.putInt(value);
                case RATIONAL -> {
                    tiff.putInt(nextRational);
                    tiff.putInt(nextRational, value).putInt(nextRational + 4, 1);
                    nextRational += 8;
                }
                default -> throw new IllegalArgumentException("type " + type);
            }
        }
        tiff.putInt(0);
    }
}
