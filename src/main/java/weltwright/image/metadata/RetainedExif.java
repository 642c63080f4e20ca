package weltwright.image.metadata;

import com.drew.lang.Rational;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;

/**
 * Selects the Exif tags that are kept of a photo: the orientation, and the tags that its focal length and its size as
 * taken follow from.
 */
final class RetainedExif {
    /** The greatest number that a TIFF LONG or a part of a RATIONAL holds. */
    private static final long GREATEST_LONG = 0xFFFF_FFFFL;

    private RetainedExif() {}

    /** Adds the tags with their standard types. Skips tags that the photo lacks or that are not numbers. */
    static TiffWriter addTo(TiffWriter tiff, Metadata metadata) {
        Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        Integer orientation = main == null ? null : main.getInteger(ExifIFD0Directory.TAG_ORIENTATION);
        if (orientation != null && orientation >= 1 && orientation <= 8) {
            tiff.main(ExifIFD0Directory.TAG_ORIENTATION, TiffWriter.SHORT, orientation);
        }
        Directory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        if (exif != null) {
            rational(tiff, exif, ExifSubIFDDirectory.TAG_FOCAL_LENGTH);
            rational(tiff, exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_X_RESOLUTION);
            rational(tiff, exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_Y_RESOLUTION);
            whole(tiff, exif, ExifSubIFDDirectory.TAG_FOCAL_PLANE_RESOLUTION_UNIT);
            whole(tiff, exif, ExifSubIFDDirectory.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH);
            whole(tiff, exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH);
            whole(tiff, exif, ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT);
        }
        return tiff;
    }

    private static void whole(TiffWriter tiff, Directory exif, int tag) {
        Integer value = exif.getInteger(tag);
        if (value != null && value >= 0) {
            tiff.exif(tag, TiffWriter.LONG, value);
        }
    }

    private static void rational(TiffWriter tiff, Directory exif, int tag) {
        Rational value = exif.getRational(tag);
        if (value != null
                && value.getNumerator() >= 0
                && value.getNumerator() <= GREATEST_LONG
                && value.getDenominator() > 0
                && value.getDenominator() <= GREATEST_LONG) {
            tiff.exif(tag, TiffWriter.RATIONAL, value.getNumerator(), value.getDenominator());
        }
    }
}
