package weltwright.image.format;

/**
 * A rectangle of a picture, in whole pixels.
 *
 * @param left first column
 * @param top first row
 * @param right column after the last one
 * @param bottom row after the last one
 */
public record PixelRectangle(int left, int top, int right, int bottom) {

    /**
     * Whether a point lies in the rectangle or less than a distance outside of it.
     *
     * @param x in pixels, pixel centres at whole numbers
     * @param y in pixels
     * @param px the distance, along rows and columns
     */
    public boolean isNear(double x, double y, double px) {
        return x > left - 0.5 - px && x < right - 0.5 + px && y > top - 0.5 - px && y < bottom - 0.5 + px;
    }

    /** Returns the smallest rectangle that contains both. */
    PixelRectangle with(PixelRectangle other) {
        return new PixelRectangle(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }

    /** Maps the rectangle from the stored picture to the picture turned upright (Exif 2.32, tag 0x0112). */
    PixelRectangle upright(int orientation, int storedWidth, int storedHeight) {
        return switch (orientation) {
            case 2 -> mirrored(true, false, storedWidth, storedHeight);
            case 3 -> mirrored(true, true, storedWidth, storedHeight);
            case 4 -> mirrored(false, true, storedWidth, storedHeight);
            case 5 -> transposed();
            case 6 -> transposed().mirrored(true, false, storedHeight, storedWidth);
            case 7 -> transposed().mirrored(true, true, storedHeight, storedWidth);
            case 8 -> transposed().mirrored(false, true, storedHeight, storedWidth);
            default -> this;
        };
    }

    /** Exchanges rows and columns. */
    private PixelRectangle transposed() {
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
