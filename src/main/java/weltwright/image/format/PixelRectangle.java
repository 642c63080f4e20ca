package weltwright.image.format;

/**
 * A rectangle of a picture, in pixels.
 *
 * @param left its first column
 * @param top its first row
 * @param right the column behind its last one
 * @param bottom the row behind its last one
 */
public record PixelRectangle(int left, int top, int right, int bottom) {

    /** Whether a place, whose pixel centres are whole numbers, is in it or nearer to it than so many pixels. */
    public boolean isNear(double x, double y, double px) {
        return x > left - 0.5 - px && x < right - 0.5 + px && y > top - 0.5 - px && y < bottom - 0.5 + px;
    }

    /** The smallest area that holds both. */
    PixelRectangle with(PixelRectangle other) {
        return new PixelRectangle(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }

    /** The area of a stored picture, in the picture turned upright (Exif 2.32, tag 0x0112). */
    PixelRectangle upright(int orientation, int storedWidth, int storedHeight) {
        return switch (orientation) {
            case 2 -> mirrored(true, false, storedWidth, storedHeight);
            case 3 -> mirrored(true, true, storedWidth, storedHeight);
            case 4 -> mirrored(false, true, storedWidth, storedHeight);
            case 5 -> turned();
            case 6 -> turned().mirrored(true, false, storedHeight, storedWidth);
            case 7 -> turned().mirrored(true, true, storedHeight, storedWidth);
            case 8 -> turned().mirrored(false, true, storedHeight, storedWidth);
            default -> this;
        };
    }

    /** With rows and columns exchanged. */
    private PixelRectangle turned() {
        return new PixelRectangle(/* left= */ top, /* top= */ left, /* right= */ bottom, /* bottom= */ right);
    }

    private PixelRectangle mirrored(boolean columns, boolean rows, int width, int height) {
        return new PixelRectangle(
                columns ? width - right : left,
                rows ? height - bottom : top,
                columns ? width - left : right,
                rows ? height - top : bottom);
    }
}
