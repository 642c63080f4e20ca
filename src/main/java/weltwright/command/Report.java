package weltwright.command;

import java.io.PrintWriter;
import weltwright.measure.Length;
import weltwright.trace.Trace;

/** What came out of a photo, in a few lines. */
final class Report {
    private Report() {}

    static void of(Trace trace, PrintWriter say) {
        say.println("Blade " + both(trace.silhouette().bladeLengthMm()) + ", overall "
                + both(trace.silhouette().overallLengthMm()) + ". 95 of 100 points of the outline lie within "
                + new Length(trace.error().error95Mm()).inMillimetres() + " of the knife's.");
        trace.notes().forEach(say::println);
    }

    private static String both(double mm) {
        Length length = new Length(mm);
        return length.inMillimetres() + " (" + length.inInches() + ")";
    }
}
