package weltwright.sheath.spec;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.OptionalDouble;

/**
 * The leather of a strap.
 *
 * @param widthMm of the strap
 * @param thicknessMm thickness of its own leather, or empty where it is cut from that of the body
 */
@RecordBuilder
public record StrapLeather(double widthMm, OptionalDouble thicknessMm) implements StrapLeatherBuilder.With {
    /** A strap of the body's leather, of the usual width of belt loops. Common practice. */
    public static final StrapLeather BELT = new StrapLeather(25, OptionalDouble.empty());

    /** A narrow strap of thin leather, which bends round a handle. Common practice. */
    public static final StrapLeather HANDLE = new StrapLeather(16, OptionalDouble.of(2));

    /** Returns the strap's leather, given that of the body. */
    public Leather in(Leather body) {
        return body.withThicknessMm(thicknessMm.orElse(body.thicknessMm()));
    }
}
