package weltwright.sheath.spec;

import java.util.OptionalDouble;

/**
 * What a strap is cut from.
 *
 * @param widthMm of the strap
 * @param thicknessMm of a leather of its own, or empty where it is cut from that of the body
 */
public record StrapLeather(double widthMm, OptionalDouble thicknessMm) {
    /** A strap of the body's own leather, as wide as belt loops mostly are. Common practice. */
    public static final StrapLeather BELT = new StrapLeather(25, OptionalDouble.empty());

    /** A narrow strap of thin leather, which bends round a handle. Common practice. */
    public static final StrapLeather HANDLE = new StrapLeather(16, OptionalDouble.of(2));

    public StrapLeather withWidthMm(double other) {
        return new StrapLeather(other, thicknessMm);
    }

    public StrapLeather withThicknessMm(OptionalDouble other) {
        return new StrapLeather(widthMm, other);
    }

    /** The strap's leather, on a sheath of this one. */
    public Leather in(Leather body) {
        return body.withThicknessMm(thicknessMm.orElse(body.thicknessMm()));
    }
}
