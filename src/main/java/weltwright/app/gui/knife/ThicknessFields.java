package weltwright.app.gui.knife;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JPanel;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.TypedLength;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.error.UserFacingException;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.knife.ThicknessProfile;
import weltwright.knife.ThicknessProfile.Reading;
import weltwright.message.Messages;

/** The rows for thicknesses along the knife, and a list of those in the job with buttons to remove them. */
final class ThicknessFields {
    private static final Messages TEXTS = Messages.of(ThicknessFields.class);

    // Keys of what was typed for a reading, with its distance from the tip in mm.
    private static final String PLACE = "thickness place ";
    private static final String THICKNESS = "thickness at ";

    private final JobModel model;
    private final ValidatedField<OptionalDouble> station =
            FieldFactory.optionalLength(JobFields.THICKNESS_PLACE, mm -> mm);
    private final ValidatedField<OptionalDouble> thickness;
    private final JPanel readingsPanel =
            new JPanel(new WrappedTextLayout("insets 0, fillx, wrap 2, gapy 2", "[grow,fill]8[]"));
    private final JButton photoButton = new JButton(TEXTS.text("thickness-fields.thickness-from-a-second-photo"));
    private Object displayed = List.of();
    private Object shownJob = List.of();

    ThicknessFields(JobModel model, ThicknessPhotoAction photoAction) {
        this.model = model;
        photoButton.setName("thickness from a photo");
        photoButton.setToolTipText(TEXTS.text("thickness-fields.measures-the-thickness-along-the"));
        photoButton.addActionListener(e -> photoAction.choosePhoto());
        thickness = FieldFactory.optionalLength(
                JobFields.THICKNESS, mm -> reading(mm).thicknessMm());
        readingsPanel.setOpaque(false);
    }

    void addTo(FormPanel form) {
        form.addRow(
                TEXTS.text("thickness-fields.elsewhere-from-the-tip"),
                station,
                TEXTS.text("thickness-fields.where-along-the-knife-you"));
        form.addRow(
                TEXTS.text("thickness-fields.thick-there"),
                thickness,
                TEXTS.text("thickness-fields.across-the-flats-up-to"));
        form.addFullWidth(readingsPanel);
        form.addFullWidth(photoButton);
        thickness.onCommit(this::commit);
        model.subscribe(this::update);
    }

    private ThicknessProfile profile() {
        return model.job().settings().thickness();
    }

    /** Returns the typed reading; throws {@link UserFacingException} without a station and for too many readings. */
    private Reading reading(double mm) {
        double fromTipMm = station.value()
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("thickness-fields.where-the-thickness-was-measured"),
                        TEXTS.text("thickness-fields.type-first-how-far-from")));
        Reading reading = new Reading(fromTipMm, mm);
        profile().with(reading);
        return reading;
    }

    private void commit() {
        if (thickness.value().isPresent()) {
            Reading reading = reading(thickness.value().getAsDouble());
            Optional<String> typedPlace = station.typedText();
            Optional<String> typed = thickness.typedText();
            model.change(job -> job.withSettings(
                            job.settings().withThickness(profile().with(reading)))
                    .withTyped(PLACE + reading.fromTipMm(), typedPlace)
                    .withTyped(THICKNESS + reading.fromTipMm(), typed));
            thickness.setValue(OptionalDouble.empty());
            station.setValue(OptionalDouble.empty());
            station.textField().requestFocusInWindow();
        }
    }

    private void change(ThicknessProfile profile) {
        model.change(job -> job.withSettings(job.settings().withThickness(profile)));
    }

    private void update() {
        Job job = model.job();
        photoButton.setEnabled(job.silhouette().isPresent());
        ThicknessProfile profile = job.settings().thickness();
        Object opened = model.openedPhoto();
        if (!opened.equals(shownJob)) {
            shownJob = opened;
            station.setValue(OptionalDouble.empty());
        }
        Object shown = List.of(profile, model.unit(), job.typed());
        if (displayed.equals(shown)) {
            return;
        }
        displayed = shown;
        readingsPanel.removeAll();
        for (Reading reading : profile.readings()) {
            String description = TEXTS.text(
                    "thickness-fields.from-the-tip",
                    TypedLength.of(model, PLACE + reading.fromTipMm(), JobFields.THICKNESS_PLACE, reading.fromTipMm()),
                    TypedLength.of(model, THICKNESS + reading.fromTipMm(), JobFields.THICKNESS, reading.thicknessMm()));
            JButton remove = new JButton(TEXTS.text("thickness-fields.remove"));
            remove.setName("remove " + description);
            remove.addActionListener(e -> change(profile().without(reading)));
            WrappedText text = new WrappedText(ThemeColors::text);
            text.showText(description);
            readingsPanel.add(text, "wmin 0");
            readingsPanel.add(remove);
        }
        readingsPanel.revalidate();
        readingsPanel.repaint();
    }
}
