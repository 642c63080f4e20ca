package weltwright.app.gui.knife;

import java.util.List;
import java.util.function.Function;
import weltwright.app.gui.form.ChoicePictures;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FieldFactory;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.PictureChoice;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.model.JobModel;
import weltwright.app.gui.model.TaskQueue;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.message.Messages;

/** The form for the knife's cross-sections: grind, edge and handle. */
final class KnifeCrossSectionForm extends FormPanel {
    private static final Messages TEXTS = Messages.of(KnifeCrossSectionForm.class);

    // Width and height of the pictures, chosen by eye.
    private static final int GRIND_PX = 96;
    private static final int HANDLE_PX = 64;

    private final ValidatedField<Double> edge = FieldFactory.length(JobFields.EDGE_THICKNESS, 0);
    private final PictureChoice<Grind.Kind> grind = new PictureChoice<>(
            "grind",
            3,
            GRIND_PX,
            List.of(
                    new ComboBoxItem<>(Grind.Kind.FULL_FLAT, TEXTS.text("knife-cross-section-form.flat-edge-to-spine")),
                    new ComboBoxItem<>(
                            Grind.Kind.PARTIAL_FLAT, TEXTS.text("knife-cross-section-form.flat-part-of-the-way")),
                    new ComboBoxItem<>(
                            Grind.Kind.SHORT_BEVEL, TEXTS.text("knife-cross-section-form.bevel-out-to-the-edge")),
                    new ComboBoxItem<>(Grind.Kind.HOLLOW, TEXTS.text("knife-cross-section-form.hollow")),
                    new ComboBoxItem<>(
                            Grind.Kind.DOUBLE_EDGED, TEXTS.text("knife-cross-section-form.edges-on-both-sides"))));
    private final ValidatedField<Double> height = FieldFactory.length(JobFields.GRIND_HEIGHT, 0);
    private final PictureChoice<HandleSection> handle = new PictureChoice<>(
            "handle cut across",
            4,
            HANDLE_PX,
            List.of(
                    new ComboBoxItem<>(HandleSection.UNKNOWN, TEXTS.text("knife-cross-section-form.not-told")),
                    new ComboBoxItem<>(HandleSection.ROUND, TEXTS.text("knife-cross-section-form.round")),
                    new ComboBoxItem<>(HandleSection.OVAL, TEXTS.text("knife-cross-section-form.oval")),
                    new ComboBoxItem<>(HandleSection.SLAB, TEXTS.text("knife-cross-section-form.slab"))));

    KnifeCrossSectionForm(JobModel model, ThicknessPhotoAction thicknessPhoto) {
        super("2 20 8 0");
        FormBinding<CrossSectionShape> shape = new FormBinding<>(model, Job::shaping, Job::withShaping);
        addPictures(
                TEXTS.text("knife-cross-section-form.grind"),
                grind,
                TEXTS.text("knife-cross-section-form.how-the-blade-is-ground"));
        shape.bind(
                grind, s -> s.grind().kind(), (s, to) -> s.withGrind(s.grind().with(to)));
        addRow(
                TEXTS.text("knife-cross-section-form.up-from-the-edge"),
                height,
                TEXTS.text("knife-cross-section-form.how-far-up-the-flats"));
        shape.bind(
                height,
                s -> s.grind().heightMm(),
                (s, mm) -> s.withGrind(new Grind(s.grind().kind(), mm)));
        addRow(
                TEXTS.text("knife-cross-section-form.behind-the-edge"),
                edge,
                TEXTS.text("knife-cross-section-form.thickness-of-the-blade-just"));
        shape.bind(edge, CrossSectionShape::edgeThicknessMm, CrossSectionShape::withEdgeThicknessMm);
        addPictures(
                TEXTS.text("knife-cross-section-form.handle"),
                handle,
                TEXTS.text("knife-cross-section-form.how-the-handle-is-shaped"));
        new FormBinding<>(model, Function.<Job>identity(), (Job job, Job to) -> to)
                .bind(handle, job -> job.settings().handleSection(), Job::withHandleSection);
        TaskQueue drawing = new TaskQueue(message -> {});
        ChoicePictures.install(grind, model, drawing, SectionPictures::knife, SectionPictures::paintGrind);
        ChoicePictures.install(handle, model, drawing, SectionPictures::knife, SectionPictures::paintHandle);
        new ThicknessFields(model, thicknessPhoto).addTo(this);
        model.subscribe(() -> setRowVisible(height, shape.current().grind().hasHeight()));
    }

    String summary(CrossSectionShape shape) {
        return TEXTS.text(
                "knife-cross-section-form.behind-the-edge-2",
                grind.lowerCaseLabelOf(shape.grind().kind()),
                unit().format(shape.edgeThicknessMm()));
    }
}
