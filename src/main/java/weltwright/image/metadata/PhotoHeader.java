package weltwright.image.metadata;

import com.drew.imaging.FileType;
import com.drew.imaging.FileTypeDetector;
import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.bmp.BmpHeaderDirectory;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.jpeg.JpegDirectory;
import com.drew.metadata.png.PngDirectory;
import com.drew.metadata.webp.WebpDirectory;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import weltwright.error.UserFacingException;
import weltwright.image.format.ImageFormat;

/**
 * What the first bytes and the Exif data of a picture file tell, without decoding the picture.
 *
 * <p>Exif tags by their numbers: CIPA DC-008 (Exif 2.32), tables 4 to 8.
 *
 * @param orientation 1 to 8, as Exif numbers them
 * @param cutOut whether the picture is known, or must be feared, to be a part of a larger one
 */
public record PhotoHeader(
        ImageFormat format,
        int storedWidthPx,
        int storedHeightPx,
        int orientation,
        OptionalDouble focal35mm,
        boolean cutOut) {
    private static final long GREATEST_PIXELS = 200_000_000;

    /** The diagonal of the 36 mm by 24 mm frame that a 35 mm film camera exposes. */
    private static final double FILM_DIAGONAL_MM = Math.hypot(36, 24);

    /** What any lens that photographs a knife has; outside of it the tag is not to be believed. */
    private static final double LEAST_FOCAL_35MM = 5;

    private static final double GREATEST_FOCAL_35MM = 2000;

    private static final int LONGEST_NAME = 60;

    private static final double SAME_SHAPE = 0.01;

    /**
     * Longer side over shorter of what phones and cameras take: square, 5:4, 4:3, 3:2, 16:9 and longer. From memory.
     */
    private static final List<Double> SHAPES =
            List.of(1.0, 5 / 4.0, 4 / 3.0, 3 / 2.0, 16 / 9.0, 2.0, 19.5 / 9, 20 / 9.0);

    /** The file without what {@link MetadataStripper} takes out, and what it tells then; it names no camera. */
    public record Stripped(byte[] bytes, PhotoHeader header, Optional<CameraIdentity> camera) {}

    public static Stripped stripped(String name, byte[] bytes) {
        if (bytes.length == 0) {
            throw new UserFacingException(name + " is empty.", "Copy the photo from the camera or phone again.");
        }
        ImageFormat format = format(name, bytes);
        Metadata metadata = metadata(name, bytes);
        of(name, format, metadata); // more pixels than can be handled are not copied
        try {
            byte[] stripped = MetadataStripper.strip(format, bytes, metadata);
            return new Stripped(stripped, of(name, format, metadata(name, stripped)), camera(metadata));
        } catch (IllegalArgumentException e) {
            throw new UserFacingException(
                    name + " is damaged, or stored in a way that is out of use.",
                    "Copy the photo from the camera or phone again, or save it as JPEG.",
                    e);
        }
    }

    private static Metadata metadata(String name, byte[] bytes) {
        try {
            return ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes), bytes.length);
        } catch (ImageProcessingException | IOException e) {
            throw damaged(name, e);
        }
    }

    private static PhotoHeader of(String name, ImageFormat format, Metadata metadata) {
        int width = size(metadata, format, true).orElseThrow(() -> damaged(name, null));
        int height = size(metadata, format, false).orElseThrow(() -> damaged(name, null));
        if ((long) width * height > GREATEST_PIXELS) {
            throw new UserFacingException(
                    name + " has " + width + " by " + height + " pixels, more than the " + GREATEST_PIXELS / 1_000_000
                            + " million that can be handled.",
                    "Save a smaller copy of the photo.");
        }
        return new PhotoHeader(
                format,
                width,
                height,
                orientation(metadata),
                focal35mm(metadata, width, height),
                cutOut(metadata, width, height));
    }

    /** Whether the stored rows are rows of the upright picture, and not its columns. */
    public boolean upright() {
        return orientation <= 4;
    }

    private static ImageFormat format(String name, byte[] bytes) {
        FileType type;
        try {
            type = FileTypeDetector.detectFileType(new BufferedInputStream(new ByteArrayInputStream(bytes)));
        } catch (IOException e) {
            throw damaged(name, e);
        }
        return switch (type) {
            case Jpeg -> ImageFormat.JPEG;
            case Png -> ImageFormat.PNG;
            case Tiff -> ImageFormat.TIFF;
            case Bmp -> ImageFormat.BMP;
            case WebP -> ImageFormat.WEBP;
            case Unknown ->
                throw new UserFacingException(
                        name + " is not a picture that can be read.",
                        "Choose a photo saved as JPEG, PNG, TIFF, BMP or WebP.");
            case Heif ->
                throw new UserFacingException(
                        name + " is a HEIC photo, which cannot be read here.",
                        "Save or share it from the phone as JPEG.");
            default ->
                throw new UserFacingException(
                        name + " is a " + type.getName() + " file, which cannot be read.", "Save the photo as JPEG.");
        };
    }

    private static OptionalInt size(Metadata metadata, ImageFormat format, boolean width) {
        return switch (format) {
            case JPEG ->
                size(
                        metadata,
                        JpegDirectory.class,
                        width ? JpegDirectory.TAG_IMAGE_WIDTH : JpegDirectory.TAG_IMAGE_HEIGHT);
            case PNG ->
                size(
                        metadata,
                        PngDirectory.class,
                        width ? PngDirectory.TAG_IMAGE_WIDTH : PngDirectory.TAG_IMAGE_HEIGHT);
            case TIFF ->
                size(
                        metadata,
                        ExifIFD0Directory.class,
                        width ? ExifIFD0Directory.TAG_IMAGE_WIDTH : ExifIFD0Directory.TAG_IMAGE_HEIGHT);
            case BMP ->
                size(
                        metadata,
                        BmpHeaderDirectory.class,
                        width ? BmpHeaderDirectory.TAG_IMAGE_WIDTH : BmpHeaderDirectory.TAG_IMAGE_HEIGHT);
            case WEBP ->
                size(
                        metadata,
                        WebpDirectory.class,
                        width ? WebpDirectory.TAG_IMAGE_WIDTH : WebpDirectory.TAG_IMAGE_HEIGHT);
        };
    }

    private static OptionalInt size(Metadata metadata, Class<? extends Directory> kind, int tag) {
        for (Directory directory : metadata.getDirectoriesOfType(kind)) {
            Integer size = directory.getInteger(tag);
            // A BMP whose rows run downwards has a negative height.
            if (size != null && size != 0 && size != Integer.MIN_VALUE) {
                return OptionalInt.of(Math.abs(size));
            }
        }
        return OptionalInt.empty();
    }

    private static int orientation(Metadata metadata) {
        Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        Integer orientation = main == null ? null : main.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
        return orientation == null || orientation < 1 || orientation > 8 ? 1 : orientation;
    }

    private static Optional<CameraIdentity> camera(Metadata metadata) {
        Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        if (main == null) {
            return Optional.empty();
        }
        String make = words(main, ExifIFD0Directory.TAG_MAKE);
        String model = words(main, ExifIFD0Directory.TAG_MODEL);
        return make.isEmpty() && model.isEmpty() ? Optional.empty() : Optional.of(new CameraIdentity(make, model));
    }

    /** A tag's text without what some cameras pad it with; a stranger's file may hold much of it. */
    private static String words(Directory directory, int tag) {
        String words = directory.getString(tag);
        String plain = words == null ? "" : words.replaceAll("\\p{Cntrl}", "").strip();
        return plain.substring(0, Math.min(LONGEST_NAME, plain.length()));
    }

    private static OptionalDouble focal35mm(Metadata metadata, int width, int height) {
        Directory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        if (exif == null || cropped(exif, width, height)) {
            return OptionalDouble.empty();
        }
        double told = number(exif, ExifSubIFDDirectory.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH); // 0 means unknown
        double focal = told > 0 ? told : focalFromSensor(exif, width, height);
        return focal >= LEAST_FOCAL_35MM && focal <= GREATEST_FOCAL_35MM
                ? OptionalDouble.of(focal)
                : OptionalDouble.empty();
    }

    /**
     * The true focal length, enlarged as the film's diagonal is larger than the sensor's; NaN where a tag is missing.
     */
    private static double focalFromSensor(Directory exif, int width, int height) {
        double unitMm = switch ((int) number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_RESOLUTION_UNIT)) {
            case 3 -> 10;
            case 4 -> 1; // 4 and 5 are not of Exif but of TIFF/EP, and some cameras write them
            case 5 -> 0.001;
            default -> 25.4;
        };
        // The resolution is that of the picture as taken, which may since have been made smaller.
        double takenWidth = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH, width);
        double takenHeight = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT, height);
        double sensorWidthMm = takenWidth / number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_X_RESOLUTION) * unitMm;
        double sensorHeightMm = takenHeight / number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_Y_RESOLUTION) * unitMm;
        return number(exif, ExifSubIFDDirectory.TAG_FOCAL_LENGTH)
                * FILM_DIAGONAL_MM
                / Math.hypot(sensorWidthMm, sensorHeightMm);
    }

    /** Whether the picture has another shape than when it was taken; a picture made smaller as a whole has the same. */
    private static boolean cropped(Directory exif, int width, int height) {
        double takenWidth = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH, width);
        double takenHeight = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT, height);
        double shape = (double) Math.max(width, height) / Math.min(width, height);
        double takenShape = Math.max(takenWidth, takenHeight) / Math.min(takenWidth, takenHeight);
        return Math.abs(shape / takenShape - 1) > SAME_SHAPE;
    }

    /**
     * Known where the Exif data say how large it was when taken; feared where they do not, and no camera has its shape.
     */
    private static boolean cutOut(Metadata metadata, int width, int height) {
        Directory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        boolean told = exif != null
                && number(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH) > 0
                && number(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT) > 0;
        double shape = (double) Math.max(width, height) / Math.min(width, height);
        return told
                ? cropped(exif, width, height)
                : SHAPES.stream().noneMatch(usual -> Math.abs(shape / usual - 1) < SAME_SHAPE);
    }

    private static double taken(Directory exif, int tag, int now) {
        double taken = number(exif, tag);
        return taken > 0 ? taken : now;
    }

    /** A tag's value; NaN where it is missing or no number. */
    private static double number(Directory exif, int tag) {
        Double value = exif.getDoubleObject(tag);
        return value == null ? Double.NaN : value;
    }

    private static UserFacingException damaged(String name, @Nullable Exception cause) {
        return new UserFacingException(
                name + " is damaged: its size in pixels cannot be read.",
                "Copy the photo from the camera or phone again.",
                cause);
    }
}
