package weltwright.app.gui.knife;

import java.util.Optional;
import java.util.OptionalDouble;
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
import weltwright.knife.ThicknessProfile;
import weltwright.knife.ThicknessProfile.Reading;
import weltwright.units.Length;

/** Lines for thicknesses that are measured along the knife, and beneath them those that were. */
final class ThicknessFields {
    private final JobModel bench;
    private final ValidatedField<OptionalDouble> place =
            ValidatedFields.lengthIfAny(JobFields.THICKNESS_PLACE, mm -> mm);
    private final ValidatedField<OptionalDouble> thickness;
    private final JPanel kept = new JPanel(new WrappedTextLayout("insets 0, fillx, wrap 2, gapy 2", "[grow,fill]8[]"));
    private final JButton fromPhoto = new JButton("Thickness from a second photo\u2026");
    private Optional<ThicknessProfile> shown = Optional.empty();

    ThicknessFields(JobModel bench, ThicknessPhotoAction photo) {
        this.bench = bench;
        fromPhoto.setName("thickness from a photo");
        fromPhoto.setToolTipText("Measures the thickness along the knife from a photo of it standing upright");
        fromPhoto.addActionListener(e -> photo.ask());
        thickness = ValidatedFields.lengthIfAny(
                JobFields.THICKNESS, mm -> measured(mm).thicknessMm());
        kept.setOpaque(false);
    }

    void addTo(FormPanel form) {
        form.line("Elsewhere, from the tip", (char) 0, place, "Where along the knife you measured how thick it is");
        form.line(
                "Thick there",
                (char) 0,
                thickness,
                "Across the flats. Up to eight places; in between, the knife is taken to be straight");
        form.wide(kept);
        form.wide(fromPhoto);
        thickness.onTaken(this::take);
        bench.watch(this::follow);
    }

    private ThicknessProfile profile() {
        return bench.job().settings().thickness();
    }

    /** What is typed; throws {@link UserFacingException} where the place is missing, or there are too many. */
    private Reading measured(double mm) {
        double fromTipMm = place.value()
                .orElseThrow(() -> new UserFacingException(
                        "Where the thickness was measured is not said.", "Type first how far from the tip."));
        Reading reading = new Reading(fromTipMm, mm);
        profile().with(reading);
        return reading;
    }

    private void take() {
        if (thickness.value().isPresent()) {
            change(profile().with(measured(thickness.value().getAsDouble())));
            thickness.show(OptionalDouble.empty());
            place.show(OptionalDouble.empty());
            place.field().requestFocusInWindow();
        }
    }

    private void change(ThicknessProfile profile) {
        bench.change(job -> job.withSettings(job.settings().withThickness(profile)));
    }

    private void follow() {
        Job job = bench.job();
        fromPhoto.setEnabled(job.silhouette().isPresent());
        ThicknessProfile profile = job.settings().thickness();
        if (shown.equals(Optional.of(profile))) {
            return;
        }
        shown = Optional.of(profile);
        kept.removeAll();
        for (Reading reading : profile.readings()) {
            String told = new Length(reading.fromTipMm()).inMillimetres() + " from the tip: "
                    + new Length(reading.thicknessMm()).inMillimetres();
            JButton remove = new JButton("Remove");
            remove.setName("remove " + told);
            remove.addActionListener(e -> change(profile().without(reading)));
            WrappedText words = new WrappedText(ThemeColors::text);
            words.say(told);
            kept.add(words, "wmin 0");
            kept.add(remove);
        }
        kept.revalidate();
        kept.repaint();
    }
}
