package weltwright.image.metadata;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.plugins.tiff.BaselineTIFFTagSet;
import javax.imageio.plugins.tiff.TIFFDirectory;
import javax.imageio.plugins.tiff.TIFFField;
import javax.imageio.plugins.tiff.TIFFTag;
import javax.imageio.stream.ImageOutputStream;
import org.junit.jupiter.api.Test;
import weltwright.error.UserFacingException;
import weltwright.image.Photo;

/**
 * What a photo tells of the person who took it is nowhere in what is kept, and its picture is what it was, as the JDK's
 * own readers decode it. Each private part here holds the word {@value #SECRET}, which no picture holds by chance.
 */
class MetadataPrivacyTest {
    private static final String SECRET = "Lighthouse Lane 7";

    private static final int ASCII_TAG_ARTIST = 0x013B;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;

    @Test
    void nothingPrivateStaysInAJpeg() throws IOException {
        byte[] file = jpegOfAPhone();
        Photo photo = Photo.of("knife.jpg", file);

        assertThat(text(file)).contains(SECRET);
        assertThat(text(photo.bytes()))
                .doesNotContain(SECRET, "Invented", "2024:05:06", "http://ns.adobe.com", "MPF", "ftyp");
        assertKeeps(photo, file);
        assertThat(photo.camera()).contains(new CameraIdentity("Invented", "Invented X 3"));
        assertThat(Photo.of("knife.jpg", photo.bytes()).camera()).isEmpty();
    }

    /** Exif 2.32: orientation 0x0112, focal length in 35 mm terms 0xA405, size when taken 0xA002 and 0xA003. */
    @Test
    void whatTheProgramNeedsStaysInAJpeg() throws IOException {
        Photo kept = Photo.of("knife.jpg", Photo.of("knife.jpg", jpegOfAPhone()).bytes());
        assertThat(kept.orientation()).isEqualTo(6);
        assertThat(kept.focal35mm()).hasValue(26);
        assertThat(kept.isCutOut()).isFalse();
        byte[] cut = new JpegWithExif()
                .sub(0xA002, LONG, 4000)
                .sub(0xA003, LONG, 3000)
                .bytes(picture(64, 30));
        assertThat(Photo.of("cut.jpg", Photo.of("cut.jpg", cut).bytes()).isCutOut())
                .isTrue();
        byte[] bySensor = new JpegWithExif()
                .sub(0x920A, RATIONAL, 50)
                .sub(0xA20E, RATIONAL, 100)
                .sub(0xA20F, RATIONAL, 100)
                .sub(0xA210, SHORT, 3)
                .bytes(picture(64, 48));
        assertThat(Photo.of("a.jpg", Photo.of("a.jpg", bySensor).bytes()).focal35mm())
                .isEqualTo(Photo.of("a.jpg", bySensor).focal35mm())
                .isPresent();
    }

    /** What is stored upright and without a focal length needs no Exif data at all. */
    @Test
    void aPlainJpegStaysAsItIs() throws IOException {
        byte[] file = new JpegWithExif().words(ASCII_TAG_ARTIST, SECRET).bytes(picture(64, 48));
        assertThat(Photo.of("a.jpg", file).bytes()).isEqualTo(encoded("jpg"));
    }

    /** PNG 1.2: tEXt, tIME; its extensions: eXIf, iTXt. */
    @Test
    void nothingPrivateStaysInAPng() throws IOException {
        byte[] plain = encoded("png");
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(plain, 0, 33); // signature and IHDR
        file.writeBytes(chunk("tEXt", ("Author\0" + SECRET).getBytes(US_ASCII)));
        file.writeBytes(chunk("iTXt", ("XML:com.adobe.xmp\0\0\0\0\0" + SECRET).getBytes(US_ASCII)));
        file.writeBytes(chunk(
                "eXIf",
                new TiffWriter()
                        .main(0x0112, SHORT, 6)
                        .main(0x013B, 2, (SECRET + "\0").getBytes(US_ASCII))
                        .exif(0xA405, SHORT, 26)
                        .bytes()));
        file.write(plain, 33, plain.length - 33);
        file.writeBytes(SECRET.getBytes(US_ASCII)); // behind the end

        Photo photo = Photo.of("knife.png", file.toByteArray());

        assertThat(text(photo.bytes())).doesNotContain(SECRET, "tEXt", "iTXt");
        assertKeeps(photo, file.toByteArray());
        assertThat(photo.orientation()).isEqualTo(6);
        assertThat(photo.focal35mm()).hasValue(26);
        assertThat(Photo.of("plain.png", plain).bytes()).isEqualTo(plain);
    }

    /** RFC 9649, sections 2.5 to 2.7. The picture's own chunk is not looked into, so it may be anything. */
    @Test
    void nothingPrivateStaysInAWebp() {
        byte[] vp8l = {0x2f, 63, (byte) (47 << 6 & 0xFF), 47 >> 2, 0, 1, 2, 3};
        byte[] extended = {0x2C, 0, 0, 0, 63, 0, 0, 47, 0, 0}; // profile, Exif and XMP; 64 by 48
        byte[] exif = new TiffWriter()
                .main(0x0112, SHORT, 8)
                .main(0x013B, 2, (SECRET + "\0").getBytes(US_ASCII))
                .bytes();
        byte[] file = webp(
                new String[] {"VP8X", "ICCP", "VP8L", "EXIF", "XMP "},
                extended,
                SECRET.getBytes(US_ASCII),
                vp8l,
                exif,
                SECRET.getBytes(US_ASCII));

        Photo photo = Photo.of("knife.webp", file);

        assertThat(text(photo.bytes())).doesNotContain(SECRET, "ICCP", "XMP ").contains("VP8X", "VP8L", "EXIF");
        assertThat(photo.orientation()).isEqualTo(8);
        assertThat(photo.widthPx()).isEqualTo(48);
        byte[] kept = photo.bytes();
        assertThat(kept[20]).as("what the flags say is there").isEqualTo((byte) 0x08);
        assertThat(ByteBuffer.wrap(kept).order(ByteOrder.LITTLE_ENDIAN).getInt(4))
                .isEqualTo(kept.length - 8);
        assertThat(Photo.of("knife.webp", kept)).isEqualTo(photo);
        assertThat(Photo.of("knife.webp", kept).orientation()).isEqualTo(8);
    }

    @Test
    void nothingPrivateStaysInATiff() throws IOException {
        for (String compression : new String[] {"Deflate", "LZW", "PackBits", null}) {
            byte[] file = tiff(compression);
            assertThat(text(file)).contains(SECRET);
            Photo photo = Photo.of("knife.tif", file);
            assertThat(text(photo.bytes())).doesNotContain(SECRET);
            assertKeeps(photo, file);
            assertThat(photo.orientation()).isEqualTo(3);
        }
    }

    @Test
    void aDamagedTiffIsRefused() throws IOException {
        byte[] file = tiff("Deflate");
        Random random = new Random(3);
        for (int i = 0; i < 3000; i++) {
            byte[] damaged = file.clone();
            for (int k = 0; k < 4; k++) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt();
            }
            try {
                Photo photo = Photo.of("knife.tif", damaged);
                assertThat(photo.widthPx()).isPositive();
            } catch (UserFacingException trouble) {
                assertThat(trouble).hasMessageStartingWith("knife.tif ");
            }
        }
        byte[] cut = Arrays.copyOf(file, file.length / 2);
        assertThatThrownBy(() -> Photo.of("knife.tif", cut)).isInstanceOf(UserFacingException.class);
    }

    /** The pixels are those of the whole file, and what is stripped stays as it is. */
    private static void assertKeeps(Photo photo, byte[] file) throws IOException {
        BufferedImage before = ImageIO.read(new ByteArrayInputStream(file));
        BufferedImage after = ImageIO.read(new ByteArrayInputStream(photo.bytes()));
        assertThat(after.getRGB(0, 0, 64, 48, null, 0, 64)).isEqualTo(before.getRGB(0, 0, 64, 48, null, 0, 64));
        Photo again = Photo.of(photo.name(), photo.bytes());
        assertThat(again).isEqualTo(photo);
        assertThat(again.orientation()).isEqualTo(photo.orientation());
        assertThat(again.focal35mm()).isEqualTo(photo.focal35mm());
        assertThat(again.isCutOut()).isEqualTo(photo.isCutOut());
    }

    /**
     * Exif with camera, time and owner, XMP, an index of further pictures, IPTC, a comment, a thumbnail in JFIF's own
     * segment and another in its extension, and a short film behind the picture.
     */
    private static byte[] jpegOfAPhone() throws IOException {
        byte[] file = new JpegWithExif()
                .words(0x010F, "Invented")
                .words(0x0110, "Invented X 3")
                .words(0x0132, "2024:05:06 07:08:09")
                .words(ASCII_TAG_ARTIST, SECRET)
                .main(0x0112, SHORT, 6)
                .sub(0xA405, SHORT, 26)
                .sub(0x920A, RATIONAL, 5)
                .sub(0xA002, LONG, 4000)
                .sub(0xA003, LONG, 3000)
                .bytes(encoded("jpg"));
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        all.write(file, 0, 2);
        byte[] thumbnail = new byte[14 + 3 * 2 * 4];
        byte[] jfif = {'J', 'F', 'I', 'F', 0, 1, 2, 1, 0, 72, 0, 72, 2, 4};
        System.arraycopy(jfif, 0, thumbnail, 0, jfif.length);
        System.arraycopy(SECRET.getBytes(US_ASCII), 0, thumbnail, 14, SECRET.length());
        all.writeBytes(segment(0xE0, thumbnail));
        all.writeBytes(segment(0xE0, ("JFXX\0\u0013" + SECRET).getBytes(ISO_8859_1)));
        all.writeBytes(segment(0xE1, ("http://ns.adobe.com/xap/1.0/\0" + SECRET).getBytes(US_ASCII)));
        all.writeBytes(segment(0xE2, ("MPF\0" + SECRET).getBytes(US_ASCII)));
        all.writeBytes(segment(0xED, ("Photoshop 3.0\0" + SECRET).getBytes(US_ASCII)));
        all.writeBytes(segment(0xFE, SECRET.getBytes(US_ASCII)));
        all.write(file, 2, file.length - 2);
        all.writeBytes(("\0\0\0\30ftypmp42" + SECRET).getBytes(ISO_8859_1));
        return all.toByteArray();
    }

    private static byte[] segment(int marker, byte[] data) {
        return ByteBuffer.allocate(4 + data.length)
                .put((byte) 0xFF)
                .put((byte) marker)
                .putShort((short) (2 + data.length))
                .put(data)
                .array();
    }

    private static byte[] chunk(String kind, byte[] data) {
        CRC32 checksum = new CRC32();
        checksum.update(kind.getBytes(US_ASCII));
        checksum.update(data);
        return ByteBuffer.allocate(12 + data.length)
                .putInt(data.length)
                .put(kind.getBytes(US_ASCII))
                .put(data)
                .putInt((int) checksum.getValue())
                .array();
    }

    private static byte[] webp(String[] kinds, byte[]... data) {
        ByteBuffer file = ByteBuffer.allocate(1000).order(ByteOrder.LITTLE_ENDIAN);
        file.put("RIFF\0\0\0\0WEBP".getBytes(US_ASCII));
        for (int i = 0; i < kinds.length; i++) {
            file.put(kinds[i].getBytes(US_ASCII)).putInt(data[i].length).put(data[i]);
            file.position(file.position() + (data[i].length & 1));
        }
        file.putInt(4, file.position() - 8);
        return Arrays.copyOf(file.array(), file.position());
    }

    private static byte[] tiff(String compression) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        if (compression != null) {
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionType(compression);
        }
        BufferedImage picture = picture(64, 48);
        IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(picture), how);
        TIFFDirectory directory = TIFFDirectory.createFromMetadata(metadata);
        BaselineTIFFTagSet tags = BaselineTIFFTagSet.getInstance();
        directory.addTIFFField(new TIFFField(
                tags.getTag(BaselineTIFFTagSet.TAG_ARTIST), TIFFTag.TIFF_ASCII, 1, new String[] {SECRET}));
        directory.addTIFFField(
                new TIFFField(tags.getTag(BaselineTIFFTagSet.TAG_DATE_TIME), TIFFTag.TIFF_ASCII, 1, new String[] {
                    "2024:05:06 07:08:09"
                }));
        directory.addTIFFField(new TIFFField(tags.getTag(BaselineTIFFTagSet.TAG_ORIENTATION), 3));
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, directory.getAsMetadata()), how);
        }
        writer.dispose();
        return file.toByteArray();
    }

    private static byte[] encoded(String kind) throws IOException {
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        assertThat(ImageIO.write(picture(64, 48), kind, file)).isTrue();
        return file.toByteArray();
    }

    private static BufferedImage picture(int width, int height) {
        BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                picture.setRGB(x, y, 3 * x << 16 | 5 * y << 8 | x * y & 0xFF);
            }
        }
        return picture;
    }

    private static String text(byte[] file) {
        return new String(file, ISO_8859_1);
    }
}
