package weltwright.app.cli;

import java.io.PrintWriter;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.Trace;
import weltwright.units.Length;
import weltwright.wording.AdviceWording;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/** Prints the results of commands as text. */
final class TextReport {
    private TextReport() {}

    static void print(Trace trace, PrintWriter out) {
        print(trace, trace.silhouette(), trace.landmarkError().asksForEdge(), out);
    }

    /** Prints the traced knife of a job with its corrections; nothing for a job without a trace. */
    static void print(Job job, PrintWriter out) {
        job.trace()
                .ifPresent(trace -> print(trace, job.silhouette().orElse(trace.silhouette()), job.asksForEdge(), out));
    }

    private static void print(Trace trace, Silhouette knife, boolean asksForEdge, PrintWriter out) {
        out.println("Blade " + format(knife.bladeLengthMm()) + ", as found give or take "
                + new Length(trace.landmarkError().bladeLength95Mm()).inMillimetres() + ", overall "
                + format(knife.overallLengthMm()) + ". 95 of 100 points of the outline, as found, lie within "
                + new Length(trace.error().error95Mm()).inMillimetres() + " of the knife's.");
        knife.landmarks()
                .guard()
                .ifPresent(guard -> out.println("A guard of "
                        + new Length(Math.round(guard.lengthMm() * 10) / 10.0).inMillimetres()
                        + " along the knife, its front "
                        + new Length(Math.round((knife.landmarks().tip().x() - guard.frontMm()) * 10) / 10.0)
                                .inMillimetres()
                        + " from the tip; where that is wrong, say --guard."));
        if (asksForEdge) {
            out.println("Look which side is the edge: the outline does not tell for sure. Taken for the spine is the "
                    + (knife.spineOnLeft() ? "left" : "right")
                    + " side, seen from the butt to the tip; where that is wrong, say --other-side.");
        }
        trace.notes().stream().map(TraceWording::sentence).forEach(out::println);
    }

    static void print(PhotoAssessment assessment, PrintWriter out) {
        assessment.notes().stream().map(TraceWording::sentence).forEach(out::println);
        assessment.advice().stream().map(PhotoWording::sentences).forEach(out::println);
        assessment
                .question()
                .ifPresentOrElse(
                        out::println,
                        () -> out.println(
                                assessment.advice().isEmpty()
                                        ? "The photo is good to trace."
                                        : "The photo can be traced all the same."));
    }

    static void print(Pattern pattern, PrintWriter out) {
        pattern.sizes().forEach(size -> out.println(capitalize(size.name()) + ": " + format(size.lengthMm()) + "."));
        pattern.seams()
                .forEach(seam -> out.println(capitalize(seam.name()) + ": " + seam.holeCount() + " holes, "
                        + new Length(seam.pitchMm()).inMillimetres() + " apart."));
        pattern.advice().forEach(advice -> out.println(AdviceWording.line(advice)));
    }

    private static String capitalize(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String format(double mm) {
        Length length = new Length(Math.round(mm * 10) / 10.0); // the precision of a trace
        return length.inMillimetres() + " (" + length.inInches() + ")";
    }
}
