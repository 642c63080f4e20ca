package weltwright.app.gui.knife;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JPanel;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.Silhouette;
import weltwright.units.Length;

/**
 * Lines for the measures that a maker takes on the knife itself, and beneath them those that the outline agrees with.
 */
final class CaliperFields {
    private final JobModel bench;
    private final ValidatedField<OptionalDouble> length;
    private final ValidatedField<OptionalDouble> place;
    private final ValidatedField<OptionalDouble> width;
    private final JPanel kept = new JPanel(new WrappedTextLayout("insets 0, fillx, wrap 2, gapy 2", "[grow,fill]8[]"));
    private List<CaliperMeasure> shown = List.of();

    CaliperFields(JobModel bench) {
        this.bench = bench;
        length = ValidatedFields.lengthIfAny(
                JobFields.BLADE_LENGTH,
                mm -> CaliperMeasure.bladeLength(mm, outlined()).mm());
        place = ValidatedFields.lengthIfAny(JobFields.WIDTH_PLACE, mm -> mm);
        width = ValidatedFields.lengthIfAny(
                JobFields.WIDTH,
                mm -> CaliperMeasure.width(placeMm(), mm, outlined()).mm());
        kept.setOpaque(false);
    }

    void addTo(FormPanel form) {
        form.line("Blade, heel to tip", 'P', length, "The outline is then drawn out to it; empty leaves it as traced");
        form.line(
                "At, from the tip",
                'F',
                place,
                "Where the width was measured; clicking with the Width tool fills it in");
        form.line("Width there", 'W', width, "The outline is then bent to it, at this place and a little round it");
        form.wide(kept);
        length.onTaken(this::takeLength);
        width.onTaken(this::takeWidth);
        bench.watch(this::follow);
    }

    void measureWidth(double fromTipMm) {
        place.show(OptionalDouble.of(fromTipMm));
        width.field().requestFocusInWindow();
    }

    private Silhouette outlined() {
        return bench.job()
                .silhouette()
                .orElseThrow(() -> new UserFacingException("The knife has no outline yet.", "Have it found first."));
    }

    private double placeMm() {
        return place.value()
                .orElseThrow(() -> new UserFacingException(
                        "Where the width was measured is not said.", "Type first how far from the tip."));
    }

    private void takeLength() {
        if (length.value().isPresent()) {
            bench.change(job ->
                    job.withCaliper(CaliperMeasure.bladeLength(length.value().getAsDouble(), outlined())));
        } else {
            kept(bench.job()).filter(c -> c.fromTipMm().isEmpty()).findFirst().ifPresent(this::remove);
        }
    }

    private void takeWidth() {
        if (width.value().isPresent()) {
            bench.change(job -> job.withCaliper(
                    CaliperMeasure.width(placeMm(), width.value().getAsDouble(), outlined())));
            width.show(OptionalDouble.empty());
        }
    }

    private void remove(CaliperMeasure caliper) {
        bench.change(job -> job.withoutCaliper(caliper));
    }

    private static Stream<CaliperMeasure> kept(Job job) {
        return job.calipers().stream();
    }

    private void follow() {
        Job job = bench.job();
        boolean there = job.silhouette().isPresent();
        for (ValidatedField<?> entry : List.of(length, place, width)) {
            entry.field().setEnabled(there);
        }
        length.show(kept(job)
                .filter(c -> c.fromTipMm().isEmpty())
                .map(c -> OptionalDouble.of(c.mm()))
                .findFirst()
                .orElse(OptionalDouble.empty()));
        if (shown.equals(job.calipers())) {
            return;
        }
        shown = job.calipers();
        kept.removeAll();
        for (CaliperMeasure caliper : shown) {
            JButton remove = new JButton("Remove");
            remove.setName("remove " + told(caliper));
            remove.setToolTipText("Lets the outline go back to " + new Length(caliper.outlineMm()).inMillimetres());
            remove.addActionListener(e -> remove(caliper));
            WrappedText words = new WrappedText(ThemeColors::text);
            words.say(told(caliper));
            kept.add(words, "wmin 0");
            kept.add(remove);
        }
        kept.revalidate();
        kept.repaint();
    }

    private static String told(CaliperMeasure caliper) {
        String what = caliper.fromTipMm().isPresent()
                ? new Length(caliper.fromTipMm().getAsDouble()).inMillimetres() + " from the tip: "
                : "Blade: ";
        return what + new Length(caliper.mm()).inMillimetres() + ", was "
                + new Length(caliper.outlineMm()).inMillimetres();
    }
}
