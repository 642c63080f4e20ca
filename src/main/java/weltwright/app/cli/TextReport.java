package weltwright.app.cli;

import java.io.PrintWriter;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.Trace;
import weltwright.units.Length;
import weltwright.wording.AdviceWording;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/** Prints the results of commands as text. */
final class TextReport {
    private static final Messages TEXTS = Messages.of(TextReport.class);

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
        out.println(TEXTS.text(
                "text-report.blade-as-found-give-or",
                format(knife.bladeLengthMm()),
                new Length(trace.landmarkError().bladeLength95Mm()).inMillimetres(),
                format(knife.overallLengthMm()),
                new Length(trace.error().error95Mm()).inMillimetres()));
        knife.landmarks()
                .guard()
                .ifPresent(guard -> out.println(TEXTS.text(
                        "text-report.a-guard-of-along-the",
                        new Length(Math.round(guard.lengthMm() * 10) / 10.0).inMillimetres(),
                        new Length(Math.round((knife.landmarks().tip().x() - guard.frontMm()) * 10) / 10.0)
                                .inMillimetres())));
        if (asksForEdge) {
            out.println(
                    knife.spineOnLeft()
                            ? TEXTS.text("text-report.look-which-side-is-the")
                            : TEXTS.text("text-report.look-which-side-is-the-edge-the-outline"));
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
                                        ? TEXTS.text("text-report.the-photo-is-good-to")
                                        : TEXTS.text("text-report.the-photo-can-be-traced")));
    }

    static void print(Pattern pattern, PrintWriter out) {
        pattern.sizes().forEach(size -> out.println(capitalize(size.name()) + ": " + format(size.lengthMm()) + "."));
        pattern.seams()
                .forEach(seam -> out.println(TEXTS.text(
                        "text-report.holes-apart",
                        capitalize(seam.name()),
                        seam.holeCount(),
                        new Length(seam.pitchMm()).inMillimetres())));
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
