package weltwright.window;

import java.util.OptionalDouble;
import java.util.stream.Collectors;
import javax.swing.JComboBox;
import javax.swing.JToggleButton;
import weltwright.ground.GroundChoice;
import weltwright.ground.ReferenceSheet;
import weltwright.job.Fields;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.measure.Length;
import weltwright.measure.PrintScale;
import weltwright.trace.ErrorBudget;
import weltwright.trace.Trace;
import weltwright.trace.TraceSettings;

/** What the maker knows of the knife and of the photo, and what came out of it. */
final class KnifeForm extends Form {
    private static final int PARTS_TOLD = 3;
    private static final GroundChoice SHEET = new GroundChoice.Sheet();
    private static final String RULED = "ruled";

    private final Bench bench;
    private final Entry<Double> handle = Lines.slowLength(Fields.HANDLE_THICKNESS, 1);
    private final Entry<Double> spine = Lines.slowLength(Fields.SPINE_THICKNESS, 1);
    private final Entry<Double> drop = Lines.slowLength(Fields.TIP_DROP, 1);
    private final JComboBox<Choice<String>> ground = new JComboBox<>();
    private final Entry<Double> linePitch = Lines.slowLength(Fields.LINE_PITCH, 10);
    private final Entry<Double> barAcross = Lines.slowLength(Fields.SHEET_BAR_ACROSS, 1);
    private final Entry<Double> barDown = Lines.slowLength(Fields.SHEET_BAR_DOWN, 1);
    private final Entry<OptionalDouble> focal =
            Lines.numberIfAny(Fields.FOCAL_35MM, OptionalDouble.empty());
    private final JToggleButton otherSide = new JToggleButton("The other side is the edge");
    private final CaliperRows calipers;
    private boolean showing;
    private final WrappedText result = new WrappedText(Look::text);
    private final WrappedText error = new WrappedText(Look::faint);
    private final WrappedText notes = new WrappedText(Look::faint);

    KnifeForm(Bench bench) {
        this.bench = bench;
        heading("Measured with a caliper");
        line("Handle, thickest", 'H', handle, "Greatest thickness across the flats, such as 19 mm or 3/4 in");
        line("Spine, by the handle", 'S', spine, "Thickness of the blade's back where it meets the handle");
        words("The blade floats above the sheet by half the handle, so the pattern's size hangs on these.");
        ShapingForm shaping = new ShapingForm(bench);
        FoldOut shapingOut = foldOut("Cut across", 'C', shaping);
        bench.watch(() -> shapingOut.say(shaping.held(bench.job().shaping())));
        heading("How it lay");
        ground.setName("ground");
        ground.addItem(new Choice<>(SHEET.words(), "The printed sheet"));
        ground.addItem(new Choice<>(RULED, "Ruled mat or paper"));
        ground.addItem(new Choice<>(GroundChoice.Paper.A4.words(), "Blank A4 paper"));
        ground.addItem(new Choice<>(GroundChoice.Paper.LETTER.words(), "Blank Letter paper"));
        ground.addActionListener(e -> {
            if (!showing) {
                bench.change(job -> job.withSettings(settings()));
            }
        });
        line("It lay on", 'N', ground, "What the knife lay on in the photo; the printed sheet measures best");
        line("Lines apart", 'I', linePitch, "From each line of the ground to the next, bold or not: 10 mm, 1/2 in");
        line("Tip lower by", 'T', drop, "How much nearer to the sheet the tip lay than the heel; 0 if level");
        line("Sheet's bar across", 'A', barAcross, "What it measures on the printed sheet; 100 mm if the printer is true");
        line("Sheet's bar down", 'D', barDown, "What it measures on the printed sheet");
        line("Focal length, 35 mm", 'L', focal, "Only where the photo does not tell; empty takes it from the photo");
        heading("What the photo says");
        wide(result);
        otherSide.setName("other side");
        otherSide.setMnemonic('O');
        otherSide.setToolTipText("Exchange edge and spine, where the program took one for the other");
        otherSide.addActionListener(e -> bench.job()
                .silhouette()
                .ifPresent(s -> bench.change(job -> job.withSilhouette(Place.otherSide(s)))));
        wide(otherSide);
        wide(error);
        heading("Measured on the knife itself");
        calipers = new CaliperRows(bench);
        calipers.addTo(this);
        heading("How the photo was read");
        wide(notes);
        for (Entry<?> entry : new Entry<?>[] {handle, spine, linePitch, drop, barAcross, barDown, focal}) {
            entry.onTaken(() -> bench.change(entry.session(), job -> job.withSettings(settings())));
        }
        bench.watch(this::follow);
    }

    /** Puts the cursor where the maker begins. */
    void begin() {
        handle.field().requestFocusInWindow();
    }

    /** Puts the cursor where the width so far from the tip is typed. */
    void measureWidth(double fromTipMm) {
        calipers.measureWidth(fromTipMm);
    }

    private TraceSettings settings() {
        return new TraceSettings(
                handle.value(),
                spine.value(),
                drop.value(),
                focal.value(),
                new PrintScale(barAcross.value() / ReferenceSheet.BAR_MM, barDown.value() / ReferenceSheet.BAR_MM),
                chosenGround());
    }

    private GroundChoice chosenGround() {
        String words = Choice.chosen(ground);
        return words.equals(RULED) ? new GroundChoice.Ruled(linePitch.value()) : GroundChoice.parse(words);
    }

    private void follow() {
        Job job = bench.job();
        TraceSettings told = job.settings();
        handle.show(told.handleThicknessMm());
        spine.show(told.spineThicknessMm());
        boolean ruled = told.ground() instanceof GroundChoice.Ruled;
        showing = true;
        Choice.choose(ground, ruled ? RULED : told.ground().words());
        showing = false;
        if (told.ground() instanceof GroundChoice.Ruled lines) {
            linePitch.show(lines.pitchMm());
        }
        showLine(linePitch, ruled);
        showLine(barAcross, told.ground().equals(SHEET));
        showLine(barDown, told.ground().equals(SHEET));
        drop.show(told.tipDropMm());
        barAcross.show(told.sheetScale().x() * ReferenceSheet.BAR_MM);
        barDown.show(told.sheetScale().y() * ReferenceSheet.BAR_MM);
        focal.show(told.focal35mm());
        otherSide.setEnabled(job.silhouette().isPresent());
        otherSide.setSelected(job.silhouette().isPresent()
                && job.trace().isPresent()
                && job.silhouette().get().spineOnLeft() != job.trace().get().silhouette().spineOnLeft());
        result.say(job.silhouette().map(KnifeForm::told).orElse("No outline yet."));
        error.say(job.trace().map(Trace::error).map(KnifeForm::told).orElse(""));
        notes.say(job.trace().map(t -> String.join(" ", t.notes())).orElse(""));
    }

    private static String told(Silhouette s) {
        Length blade = new Length(Math.round(s.bladeLengthMm() * 10) / 10.0);
        Length overall = new Length(Math.round(s.overallLengthMm() * 10) / 10.0);
        return "Blade %s (%s), overall %s (%s).".formatted(
                blade.inMillimetres(), blade.inInches(), overall.inMillimetres(), overall.inInches());
    }

    /** The error in words: how far off, what of, and what to do about the greatest part. */
    private static String told(ErrorBudget error) {
        String within = "Of 100 places on the outline, 95 lie within %.2f mm of the true one."
                .formatted(error.error95Mm());
        if (error.parts().isEmpty()) {
            return within;
        }
        ErrorBudget.Part most = error.parts().get(0);
        String others = error.parts().stream()
                .skip(1)
                .limit(PARTS_TOLD - 1)
                .map(KnifeForm::told)
                .collect(Collectors.joining(", then "));
        return "%s Most of that comes from %s%s. To be surer: %s"
                .formatted(within, told(most), others.isEmpty() ? "" : ", then " + others, most.remedy());
    }

    private static String told(ErrorBudget.Part part) {
        return "%s (%.2f mm)".formatted(part.cause(), part.error95Mm());
    }
}
