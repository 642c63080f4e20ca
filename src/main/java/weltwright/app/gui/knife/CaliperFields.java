package weltwright.app.gui.knife;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
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
import weltwright.knife.CaliperMeasure;
import weltwright.knife.Silhouette;
import weltwright.message.Messages;

/**
 * The rows for caliper measures, to which the outline is then fitted, and a list of those in the job with buttons to
 * remove them.
 */
final class CaliperFields {
    private static final Messages TEXTS = Messages.of(CaliperFields.class);

    // Keys of what was typed for a width, with its distance from the tip in mm.
    private static final String PLACE = "width place ";
    private static final String WIDTH = "width at ";

    private final JobModel model;
    private final ValidatedField<OptionalDouble> bladeLength;
    private final ValidatedField<OptionalDouble> widthStation;
    private final ValidatedField<OptionalDouble> width;
    private final JPanel measuresPanel =
            new JPanel(new WrappedTextLayout("insets 0, fillx, wrap 2, gapy 2", "[grow,fill]8[]"));
    private Object displayed = List.of();
    private Object shownJob = List.of();

    CaliperFields(JobModel model) {
        this.model = model;
        bladeLength = FieldFactory.optionalLength(
                JobFields.BLADE_LENGTH,
                mm -> CaliperMeasure.bladeLength(mm, silhouette()).mm());
        widthStation = FieldFactory.optionalLength(JobFields.WIDTH_PLACE, mm -> mm);
        width = FieldFactory.optionalLength(
                JobFields.WIDTH,
                mm -> CaliperMeasure.width(stationMm(), mm, silhouette()).mm());
        measuresPanel.setOpaque(false);
    }

    void addTo(FormPanel form) {
        form.addRow(
                TEXTS.text("caliper-fields.blade-heel-to-tip"),
                bladeLength,
                TEXTS.text("caliper-fields.the-outline-is-then-drawn"));
        form.addRow(
                TEXTS.text("caliper-fields.at-from-the-tip"),
                widthStation,
                TEXTS.text("caliper-fields.where-the-width-was-measured"));
        form.addRow(
                TEXTS.text("caliper-fields.width-there"), width, TEXTS.text("caliper-fields.the-outline-is-then-bent"));
        form.addFullWidth(measuresPanel);
        bladeLength.onCommit(this::commitLength);
        width.onCommit(this::commitWidth);
        model.subscribe(this::update);
    }

    void editWidthAt(double fromTipMm) {
        widthStation.setValue(OptionalDouble.of(fromTipMm));
        width.textField().requestFocusInWindow();
    }

    private Silhouette silhouette() {
        return model.job()
                .silhouette()
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("caliper-fields.the-knife-has-no-outline"),
                        TEXTS.text("caliper-fields.have-it-found-first")));
    }

    private double stationMm() {
        return widthStation
                .value()
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("caliper-fields.where-the-width-was-measured-is-not-said"),
                        TEXTS.text("caliper-fields.type-first-how-far-from")));
    }

    private void commitLength() {
        if (bladeLength.value().isPresent()) {
            model.change(job -> job.withCaliper(
                            CaliperMeasure.bladeLength(bladeLength.value().getAsDouble(), silhouette()))
                    .withTyped(bladeLength.name(), bladeLength.typedText()));
        } else {
            measures(model.job())
                    .filter(c -> c.fromTipMm().isEmpty())
                    .findFirst()
                    .ifPresent(this::remove);
        }
    }

    private void commitWidth() {
        if (width.value().isPresent()) {
            Optional<String> typedPlace = widthStation.typedText();
            Optional<String> typed = width.typedText();
            model.change(job -> job.withCaliper(
                            CaliperMeasure.width(stationMm(), width.value().getAsDouble(), silhouette()))
                    .withTyped(PLACE + stationMm(), typedPlace)
                    .withTyped(WIDTH + stationMm(), typed));
            width.setValue(OptionalDouble.empty());
        }
    }

    private void remove(CaliperMeasure caliper) {
        model.change(job -> job.withoutCaliper(caliper));
    }

    private static Stream<CaliperMeasure> measures(Job job) {
        return job.calipers().stream();
    }

    private void update() {
        Job job = model.job();
        Object opened = model.openedPhoto();
        if (!opened.equals(shownJob)) {
            shownJob = opened;
            widthStation.setValue(OptionalDouble.empty());
        }
        boolean hasOutline = job.silhouette().isPresent();
        for (ValidatedField<?> field : List.of(bladeLength, widthStation, width)) {
            field.textField().setEnabled(hasOutline);
        }
        bladeLength.setValue(
                measures(job)
                        .filter(c -> c.fromTipMm().isEmpty())
                        .map(c -> OptionalDouble.of(c.mm()))
                        .findFirst()
                        .orElse(OptionalDouble.empty()),
                job.typedText(bladeLength.name()));
        Object shown = List.of(job.calipers(), model.unit(), job.typed());
        if (displayed.equals(shown)) {
            return;
        }
        displayed = shown;
        measuresPanel.removeAll();
        for (CaliperMeasure caliper : job.calipers()) {
            JButton remove = new JButton(TEXTS.text("caliper-fields.remove"));
            remove.setName("remove " + describe(caliper));
            remove.setToolTipText(TEXTS.text(
                    "caliper-fields.lets-the-outline-go-back", model.unit().format(caliper.outlineMm())));
            remove.addActionListener(e -> remove(caliper));
            WrappedText text = new WrappedText(ThemeColors::text);
            text.showText(describe(caliper));
            measuresPanel.add(text, "wmin 0");
            measuresPanel.add(remove);
        }
        measuresPanel.revalidate();
        measuresPanel.repaint();
    }

    private String describe(CaliperMeasure caliper) {
        return TEXTS.text("caliper-fields.was", measured(caliper), model.unit().format(caliper.outlineMm()));
    }

    private String measured(CaliperMeasure caliper) {
        if (caliper.fromTipMm().isEmpty()) {
            return TEXTS.text(
                    "caliper-fields.blade",
                    TypedLength.of(model, bladeLength.name(), JobFields.BLADE_LENGTH, caliper.mm()));
        }
        double fromTipMm = caliper.fromTipMm().getAsDouble();
        return TEXTS.text(
                "caliper-fields.from-the-tip",
                TypedLength.of(model, PLACE + fromTipMm, JobFields.WIDTH_PLACE, fromTipMm),
                TypedLength.of(model, WIDTH + fromTipMm, JobFields.WIDTH, caliper.mm()));
    }
}
