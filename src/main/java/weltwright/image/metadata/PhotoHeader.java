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
import weltwright.message.Messages;

/**
 * The header of an image file: format, stored size, and the Exif tags that measuring needs. The picture is not decoded.
 * Exif tags by their numbers: CIPA DC-008 (Exif 2.32), tables 4 to 8.
 *
 * @param storedWidthPx columns as stored, before the orientation is applied
 * @param storedHeightPx rows as stored
 * @param orientation Exif orientation, 1 to 8; 1 where the file has none
 * @param focal35mm focal length in 35 mm terms, by the diagonal; empty where unknown or the picture was cropped
 * @param cutOut whether the picture is known or suspected to be a part of a larger one
 */
public record PhotoHeader(
        ImageFormat format,
        int storedWidthPx,
        int storedHeightPx,
        int orientation,
        OptionalDouble focal35mm,
        boolean cutOut) {
    private static final Messages TEXTS = Messages.of(PhotoHeader.class);

    /** The greatest number of pixels that is accepted, so that the decoded picture fits into memory. Chosen by eye. */
    private static final long GREATEST_PIXELS = 200_000_000;

    /** Diagonal of the 36 mm by 24 mm frame of 35 mm film. */
    private static final double FILM_DIAGONAL_MM = Math.hypot(36, 24);

    /** The range of focal lengths that is believed. Chosen by eye to hold any lens that photographs a knife. */
    private static final double LEAST_FOCAL_35MM = 5;

    private static final double GREATEST_FOCAL_35MM = 2000;

    /** Longer names of make or model are cut off. Chosen by eye. */
    private static final int LONGEST_NAME = 60;

    /** Greatest relative difference of two aspect ratios that count as equal. Chosen by eye. */
    private static final double SAME_SHAPE = 0.01;

    /**
     * Aspect ratios, longer side over shorter, of pictures that phones and cameras take: square, 5:4, 4:3, 3:2, 16:9
     * and longer. From memory.
     */
    private static final List<Double> SHAPES =
            List.of(1.0, 5 / 4.0, 4 / 3.0, 3 / 2.0, 16 / 9.0, 2.0, 19.5 / 9, 20 / 9.0);

    /**
     * A stripped file.
     *
     * @param bytes the file without what {@link MetadataStripper} removes
     * @param header the header of these bytes
     * @param camera the camera named by the original file
     */
    public record Stripped(byte[] bytes, PhotoHeader header, Optional<CameraIdentity> camera) {}

    /**
     * Reads the header of an image file and strips the file.
     *
     * @param name name of the file, for messages
     * @throws UserFacingException where the file is empty, not a picture of a known format, damaged or too large
     */
    public static Stripped stripped(String name, byte[] bytes) {
        if (bytes.length == 0) {
            throw new UserFacingException(
                    TEXTS.text("photo-header.is-empty", name), TEXTS.text("photo-header.copy-the-photo-from-the"));
        }
        ImageFormat format = format(name, bytes);
        Metadata metadata = metadata(name, bytes);
        of(name, format, metadata); // rejects pictures that are too large before they are copied
        try {
            byte[] stripped = MetadataStripper.strip(format, bytes, metadata);
            return new Stripped(stripped, of(name, format, metadata(name, stripped)), camera(metadata));
        } catch (IllegalArgumentException e) {
            throw new UserFacingException(
                    TEXTS.text("photo-header.is-damaged-or-stored-in", name),
                    TEXTS.text("photo-header.copy-the-photo-from-the-camera-or-phone"),
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
                    TEXTS.text(
                            "photo-header.has-by-pixels-more-than", name, width, height, GREATEST_PIXELS / 1_000_000),
                    TEXTS.text("photo-header.save-a-smaller-copy-of"));
        }
        return new PhotoHeader(
                format,
                width,
                height,
                orientation(metadata),
                focal35mm(metadata, width, height),
                cutOut(metadata, width, height));
    }

    /** Whether the stored rows are columns of the upright picture. */
    public boolean isTransposed() {
        return orientation > 4;
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
                        TEXTS.text("photo-header.is-not-a-picture-that", name),
                        TEXTS.text("photo-header.choose-a-photo-saved-as"));
            case Heif ->
                throw new UserFacingException(
                        TEXTS.text("photo-header.is-a-heic-photo-which", name),
                        TEXTS.text("photo-header.save-or-share-it-from"));
            default ->
                throw new UserFacingException(
                        TEXTS.text("photo-header.is-a-file-which-cannot", name, type.getName()),
                        TEXTS.text("photo-header.save-the-photo-as-jpeg"));
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
        String make = text(main, ExifIFD0Directory.TAG_MAKE);
        String model = text(main, ExifIFD0Directory.TAG_MODEL);
        return make.isEmpty() && model.isEmpty() ? Optional.empty() : Optional.of(new CameraIdentity(make, model));
    }

    /** Returns a tag's text without control characters, which some cameras pad it with, cut to a limited length. */
    private static String text(Directory directory, int tag) {
        String raw = directory.getString(tag);
        String plain = raw == null ? "" : raw.replaceAll("\\p{Cntrl}", "").strip();
        return plain.substring(0, Math.min(LONGEST_NAME, plain.length()));
    }

    private static OptionalDouble focal35mm(Metadata metadata, int width, int height) {
        Directory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        if (exif == null || cropped(exif, width, height)) {
            return OptionalDouble.empty();
        }
        double equivalent = number(exif, ExifSubIFDDirectory.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH); // 0 means unknown
        double focal = equivalent > 0 ? equivalent : focalFromSensor(exif, width, height);
        return focal >= LEAST_FOCAL_35MM && focal <= GREATEST_FOCAL_35MM
                ? OptionalDouble.of(focal)
                : OptionalDouble.empty();
    }

    /**
     * Returns the focal length in 35 mm terms from the true focal length and the size of the sensor; NaN where a tag is
     * missing.
     */
    private static double focalFromSensor(Directory exif, int width, int height) {
        double unitMm = switch ((int) number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_RESOLUTION_UNIT)) {
            case 3 -> 10;
            case 4 -> 1; // 4 and 5 come from TIFF/EP; some cameras write them
            case 5 -> 0.001;
            default -> 25.4;
        };
        // The resolution refers to the picture as taken, before it was scaled down.
        double takenWidth = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH, width);
        double takenHeight = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT, height);
        double sensorWidthMm = takenWidth / number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_X_RESOLUTION) * unitMm;
        double sensorHeightMm = takenHeight / number(exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_Y_RESOLUTION) * unitMm;
        return number(exif, ExifSubIFDDirectory.TAG_FOCAL_LENGTH)
                * FILM_DIAGONAL_MM
                / Math.hypot(sensorWidthMm, sensorHeightMm);
    }

    /** Whether the aspect ratio differs from that of the picture as taken. Scaling keeps it. */
    private static boolean cropped(Directory exif, int width, int height) {
        double takenWidth = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH, width);
        double takenHeight = taken(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT, height);
        double shape = (double) Math.max(width, height) / Math.min(width, height);
        double takenShape = Math.max(takenWidth, takenHeight) / Math.min(takenWidth, takenHeight);
        return Math.abs(shape / takenShape - 1) > SAME_SHAPE;
    }

    /**
     * Whether the picture was cropped. Where Exif does not state the size as taken, an aspect ratio that no camera has
     * counts as cropped.
     */
    private static boolean cutOut(Metadata metadata, int width, int height) {
        Directory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        boolean isSizeKnown = exif != null
                && number(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH) > 0
                && number(exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT) > 0;
        double shape = (double) Math.max(width, height) / Math.min(width, height);
        return isSizeKnown
                ? cropped(exif, width, height)
                : SHAPES.stream().noneMatch(usual -> Math.abs(shape / usual - 1) < SAME_SHAPE);
    }

    private static double taken(Directory exif, int tag, int now) {
        double taken = number(exif, tag);
        return taken > 0 ? taken : now;
    }

    /** Returns a tag's value; NaN where it is missing or not a number. */
    private static double number(Directory exif, int tag) {
        Double value = exif.getDoubleObject(tag);
        return value == null ? Double.NaN : value;
    }

    private static UserFacingException damaged(String name, @Nullable Exception cause) {
        return new UserFacingException(
                TEXTS.text("photo-header.is-damaged-its-size-in", name),
                TEXTS.text("photo-header.copy-the-photo-from-the"),
                cause);
    }
}
