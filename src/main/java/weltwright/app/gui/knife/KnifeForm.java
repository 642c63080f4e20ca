package weltwright.app.gui.knife;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import javax.swing.AbstractButton;
import javax.swing.JButton;
import javax.swing.JToggleButton;
import weltwright.app.gui.form.CollapsibleSection;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.ground.sheet.ReferenceSheet;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.job.PhoneLensStore;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.trace.Trace;
import weltwright.trace.capture.TraceSettings;
import weltwright.units.Length;
import weltwright.units.PrintScale;
import weltwright.wording.TraceWording;

/** What the maker knows of the knife and of the photo, and what came out of it. */
public final class KnifeForm extends FormPanel {
    private static final double USUAL_GUARD_MM = 6;

    private final JobModel bench;
    private final ValidatedField<Double> handle = ValidatedFields.slowLength(JobFields.HANDLE_THICKNESS, 1);
    private final ValidatedField<Double> spine = ValidatedFields.slowLength(JobFields.SPINE_THICKNESS, 1);
    private final ValidatedField<Double> drop = ValidatedFields.slowLength(JobFields.TIP_DROP, 1);
    private final GroundFields ground;
    private final PhoneField phone;
    private final ValidatedField<Double> barAcross = ValidatedFields.slowLength(JobFields.SHEET_BAR_ACROSS, 1);
    private final ValidatedField<Double> barDown = ValidatedFields.slowLength(JobFields.SHEET_BAR_DOWN, 1);
    private final ValidatedField<OptionalDouble> focal =
            ValidatedFields.numberIfAny(JobFields.FOCAL_35MM, OptionalDouble.empty());
    private final JButton thisSide = new JButton("Red runs along the edge");
    private final JToggleButton otherSide = new JToggleButton("The other side is the edge");
    private final JButton guard = new JButton();
    private final WrappedText guardTold = new WrappedText(ThemeColors::text);
    private final CaliperFields calipers;
    private final WrappedText result = new WrappedText(ThemeColors::text);
    private final WrappedText side = new WrappedText(ThemeColors::text);
    private final WrappedText error = new WrappedText(ThemeColors::secondaryText);
    private final WrappedText notes = new WrappedText(ThemeColors::secondaryText);

    /**
     * @param phones those whose lens was measured
     * @param toCorners what shows the photo with the corners of its ground to be set
     */
    public KnifeForm(JobModel bench, PhoneLensStore phones, Runnable toCorners, ThicknessPhotoAction thicknessPhoto) {
        this.bench = bench;
        heading("Measured with a caliper");
        line("Handle, thickest", 'H', handle, "Greatest thickness across the flats, such as 19 mm or 3/4 in");
        line("Spine, by the handle", 'S', spine, "Thickness of the blade's back where it meets the handle");
        words("The blade floats above the sheet by half the handle, so the pattern's size hangs on these.");
        KnifeCrossSectionForm shaping = new KnifeCrossSectionForm(bench, thicknessPhoto);
        CollapsibleSection shapingOut = foldOut("Cut across", 'C', shaping);
        bench.watch(() -> shapingOut.say(shaping.held(bench.job().shaping())));
        heading("How it lay");
        ground = new GroundFields(bench, this, toCorners);
        line("Tip lower by", 'T', drop, "How much nearer to the sheet the tip lay than the heel; 0 if level");
        line(
                "Sheet's bar across",
                'A',
                barAcross,
                "What it measures on the printed sheet; 100 mm if the printer is true");
        line("Sheet's bar down", 'D', barDown, "What it measures on the printed sheet");
        phone = new PhoneField(bench, phones);
        phone.addTo(this);
        line("Focal length, 35 mm", 'L', focal, "Only where the photo does not tell; empty takes it from the photo");
        heading("What the photo says");
        wide(result);
        side.setName("side to look at");
        wide(side);
        sideButton(thisSide, "this side", 'R', "It is right as drawn: do not ask again", Silhouette::spineOnLeft);
        sideButton(
                otherSide,
                "other side",
                'O',
                "Exchange edge and spine, where the program took one for the other",
                s -> !s.spineOnLeft());
        guard.setName("guard");
        guard.addActionListener(e ->
                bench.job().silhouette().ifPresent(s -> bench.change(job -> job.withSilhouette(withOtherGuard(s)))));
        guardTold.setName("guard told");
        wide(guardTold);
        wide(guard);
        wide(error);
        heading("Measured on the knife itself");
        calipers = new CaliperFields(bench);
        calipers.addTo(this);
        heading("How the photo was read");
        wide(notes);
        for (ValidatedField<?> entry : new ValidatedField<?>[] {handle, spine, drop, barAcross, barDown, focal}) {
            entry.onTaken(() -> bench.change(entry.session(), job -> job.withSettings(settings())));
        }
        bench.watch(this::follow);
    }

    /** @param spineOnLeft where somebody who presses it says that the spine is */
    private void sideButton(
            AbstractButton button, String name, char mnemonic, String tip, Predicate<Silhouette> spineOnLeft) {
        button.setName(name);
        button.setMnemonic(mnemonic);
        button.setToolTipText(tip);
        button.addActionListener(e ->
                bench.job().silhouette().ifPresent(s -> bench.change(job -> job.withSpine(spineOnLeft.test(s)))));
        wide(button);
    }

    /** Puts the cursor where the maker begins. */
    public void begin() {
        handle.field().requestFocusInWindow();
    }

    /** Puts the cursor where the width so far from the tip is typed. */
    public void measureWidth(double fromTipMm) {
        calipers.measureWidth(fromTipMm);
    }

    /** The photo shows a ruled ground of which it has to be told how far apart its lines are. */
    public void askForPitch() {
        ground.askForPitch();
        follow();
    }

    private TraceSettings settings() {
        return new TraceSettings(
                handle.value(),
                spine.value(),
                drop.value(),
                focal.value(),
                new PrintScale(barAcross.value() / ReferenceSheet.BAR_MM, barDown.value() / ReferenceSheet.BAR_MM),
                bench.job().settings().ground(),
                bench.job().settings().phone(),
                bench.job().settings().thickness());
    }

    private void follow() {
        Job job = bench.job();
        TraceSettings told = job.settings();
        handle.show(told.handleThicknessMm());
        spine.show(told.spineThicknessMm());
        ground.follow(job);
        phone.follow(job);
        showLine(barAcross, ground.maybeSheet());
        showLine(barDown, ground.maybeSheet());
        drop.show(told.tipDropMm());
        barAcross.show(told.sheetScale().x() * ReferenceSheet.BAR_MM);
        barDown.show(told.sheetScale().y() * ReferenceSheet.BAR_MM);
        focal.show(told.focal35mm());
        otherSide.setEnabled(job.silhouette().isPresent());
        otherSide.setSelected(job.silhouette().isPresent()
                && job.trace().isPresent()
                && job.silhouette().get().spineOnLeft()
                        != job.trace().get().silhouette().spineOnLeft());
        followGuard(job.silhouette());
        result.say(job.silhouette().map(s -> told(s, job)).orElse("No outline yet."));
        side.say(
                job.asksForEdge()
                        ? "The outline does not tell for sure which side is the edge. Look, and press one:"
                        : "");
        thisSide.setVisible(job.asksForEdge());
        error.say(job.trace().map(Trace::error).map(TraceWording::sentences).orElse(""));
        notes.say(job.trace()
                .map(t -> t.notes().stream().map(TraceWording::sentence).collect(Collectors.joining(" ")))
                .orElse(""));
    }

    private void followGuard(Optional<Silhouette> silhouette) {
        Optional<Guard> there = silhouette.flatMap(s -> s.landmarks().guard());
        guardTold.say(there.map(g -> "A guard of " + new Length(Math.round(g.lengthMm() * 10) / 10.0).inMillimetres()
                        + " along the knife: the throat lies before it."
                        + " Pull its two marks on the outline where they are wrong.")
                .orElse(""));
        guard.setText(there.isPresent() ? "There is no guard" : "Mark a guard");
        guard.setToolTipText(
                there.isPresent()
                        ? "Takes its marks away: the sheath may then take in some of the handle"
                        : "Where a guard, a bolster or a finger guard stands out between blade and handle");
        guard.setEnabled(silhouette.isPresent());
    }

    /** Without the guard that it has; else with the one that its outline shows, or with one behind its heel. */
    private static Silhouette withOtherGuard(Silhouette s) {
        if (s.landmarks().guard().isPresent()) {
            return s.withGuard(Optional.empty());
        }
        Silhouette found = s.withGuardFound();
        return found.landmarks().guard().isPresent()
                ? found
                : s.withGuardFromTip(s.bladeLengthMm(), s.bladeLengthMm() + USUAL_GUARD_MM);
    }

    private static String told(Silhouette s, Job job) {
        Length blade = new Length(Math.round(s.bladeLengthMm() * 10) / 10.0);
        Length overall = new Length(Math.round(s.overallLengthMm() * 10) / 10.0);
        String within = job.trace()
                .map(trace -> String.format(
                        Locale.ROOT,
                        ", as found give or take %s",
                        new Length(Math.round(trace.landmarkError().bladeLength95Mm() * 10) / 10.0).inMillimetres()))
                .orElse("");
        return String.format(
                Locale.ROOT,
                "Blade %s (%s)%s; overall %s (%s).",
                blade.inMillimetres(),
                blade.inInches(),
                within,
                overall.inMillimetres(),
                overall.inInches());
    }
}
