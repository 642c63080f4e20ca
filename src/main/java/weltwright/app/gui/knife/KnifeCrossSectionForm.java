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

/** The form for the knife's cross-sections: grind, edge and handle. */
final class KnifeCrossSectionForm extends FormPanel {
    // Width and height of the pictures, chosen by eye.
    private static final int GRIND_PX = 96;
    private static final int HANDLE_PX = 64;

    private final ValidatedField<Double> edge = FieldFactory.length(JobFields.EDGE_THICKNESS, 0);
    private final PictureChoice<Grind.Kind> grind = new PictureChoice<>(
            "grind",
            3,
            GRIND_PX,
            List.of(
                    new ComboBoxItem<>(Grind.Kind.FULL_FLAT, "Flat, edge to spine"),
                    new ComboBoxItem<>(Grind.Kind.PARTIAL_FLAT, "Flat, part of the way up"),
                    new ComboBoxItem<>(Grind.Kind.SHORT_BEVEL, "Bevel out to the edge"),
                    new ComboBoxItem<>(Grind.Kind.HOLLOW, "Hollow"),
                    new ComboBoxItem<>(Grind.Kind.DOUBLE_EDGED, "Edges on both sides")));
    private final ValidatedField<Double> height = FieldFactory.length(JobFields.GRIND_HEIGHT, 0);
    private final PictureChoice<HandleSection> handle = new PictureChoice<>(
            "handle cut across",
            4,
            HANDLE_PX,
            List.of(
                    new ComboBoxItem<>(HandleSection.UNKNOWN, "Not told"),
                    new ComboBoxItem<>(HandleSection.ROUND, "Round"),
                    new ComboBoxItem<>(HandleSection.OVAL, "Oval"),
                    new ComboBoxItem<>(HandleSection.SLAB, "Slab")));

    KnifeCrossSectionForm(JobModel model, ThicknessPhotoAction thicknessPhoto) {
        super("2 20 8 0");
        FormBinding<CrossSectionShape> shape = new FormBinding<>(model, Job::shaping, Job::withShaping);
        addPictures("Grind", grind, "How the blade is ground from its spine to its edge");
        shape.bind(
                grind, s -> s.grind().kind(), (s, to) -> s.withGrind(s.grind().with(to)));
        addRow("Up from the edge", (char) 0, height, "How far up the flats the grind reaches");
        shape.bind(
                height,
                s -> s.grind().heightMm(),
                (s, mm) -> s.withGrind(new Grind(s.grind().kind(), mm)));
        addRow("Behind the edge", (char) 0, edge, "Thickness of the blade just behind its cutting edge");
        shape.bind(edge, CrossSectionShape::edgeThicknessMm, CrossSectionShape::withEdgeThicknessMm);
        addPictures(
                "Handle",
                handle,
                "How the handle is shaped, cut across: seen aslant, its rim shows more of a slab than of a round one");
        new FormBinding<>(model, Function.<Job>identity(), (Job job, Job to) -> to)
                .bind(handle, job -> job.settings().handleSection(), Job::withHandleSection);
        TaskQueue drawing = new TaskQueue(message -> {});
        ChoicePictures.install(grind, model, drawing, SectionPictures::knife, SectionPictures::paintGrind);
        ChoicePictures.install(handle, model, drawing, SectionPictures::knife, SectionPictures::paintHandle);
        new ThicknessFields(model, thicknessPhoto).addTo(this);
        model.subscribe(() -> setRowVisible(height, shape.current().grind().hasHeight()));
    }

    String summary(CrossSectionShape shape) {
        return grind.lowerCaseLabelOf(shape.grind().kind()) + ", " + unit().format(shape.edgeThicknessMm())
                + " behind the edge";
    }
}
