package weltwright.sheath.spec;

import java.util.OptionalDouble;

/**
 * The leather of a strap.
 *
 * @param widthMm of the strap
 * @param thicknessMm thickness of its own leather, or empty where it is cut from that of the body
 */
public record StrapLeather(double widthMm, OptionalDouble thicknessMm) {
    /** A strap of the body's leather, of the usual width of belt loops. Common practice. */
    public static final StrapLeather BELT = new StrapLeather(25, OptionalDouble.empty());

    /** A narrow strap of thin leather, which bends round a handle. Common practice. */
    public static final StrapLeather HANDLE = new StrapLeather(16, OptionalDouble.of(2));

    public StrapLeather withWidthMm(double other) {
        return new StrapLeather(other, thicknessMm);
    }

    public StrapLeather withThicknessMm(OptionalDouble other) {
        return new StrapLeather(widthMm, other);
    }

    /** Returns the strap's leather, given that of the body. */
    public Leather in(Leather body) {
        return body.withThicknessMm(thicknessMm.orElse(body.thicknessMm()));
    }
}
