package weltwright.app.gui.knife;

import javax.swing.JComboBox;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormBinding;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.form.ValidatedField;
import weltwright.app.gui.form.ValidatedFields;
import weltwright.app.gui.model.JobModel;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.units.Length;

/** What a knife is like across its flats, which no photo from above shows. */
final class KnifeCrossSectionForm extends FormPanel {
    private final ValidatedField<Double> edge = ValidatedFields.length(JobFields.EDGE_THICKNESS, 0);
    private final JComboBox<ComboBoxItem<Grind.Kind>> grind = ComboBoxItem.box(
            "grind",
            new ComboBoxItem<>(Grind.Kind.FULL_FLAT, "Flat, edge to spine"),
            new ComboBoxItem<>(Grind.Kind.PARTIAL_FLAT, "Flat, part of the way up"),
            new ComboBoxItem<>(Grind.Kind.SHORT_BEVEL, "Bevel out to the edge"),
            new ComboBoxItem<>(Grind.Kind.HOLLOW, "Hollow"),
            new ComboBoxItem<>(Grind.Kind.DOUBLE_EDGED, "Edges on both sides"));
    private final ValidatedField<Double> height = ValidatedFields.length(JobFields.GRIND_HEIGHT, 0);
    private final JComboBox<ComboBoxItem<Double>> handle = ComboBoxItem.box(
            "handle cut across",
            new ComboBoxItem<>(2.0, "Oval"),
            new ComboBoxItem<>(CrossSectionShape.USUAL_HANDLE, "Between oval and slab"),
            new ComboBoxItem<>(4.0, "Slab, well rounded"),
            new ComboBoxItem<>(8.0, "Slab, corners just broken"));

    KnifeCrossSectionForm(JobModel bench, ThicknessPhotoAction thicknessPhoto) {
        super("2 20 8 0");
        FormBinding<CrossSectionShape> shaping = new FormBinding<>(bench, Job::shaping, Job::withShaping);
        line("Grind", (char) 0, grind, "How the blade is ground from its spine to its edge");
        shaping.tie(
                grind, s -> s.grind().kind(), (s, to) -> s.withGrind(s.grind().with(to)));
        line("Up from the edge", (char) 0, height, "How far up the flats the grind reaches");
        shaping.tie(
                height,
                s -> s.grind().heightMm(),
                (s, mm) -> s.withGrind(new Grind(s.grind().kind(), mm)));
        line("Behind the edge", (char) 0, edge, "Thickness of the blade just behind its cutting edge");
        shaping.tie(edge, CrossSectionShape::edgeThicknessMm, CrossSectionShape::withEdgeThicknessMm);
        line("Handle", (char) 0, handle, "How the handle is shaped, cut across");
        shaping.tie(handle, CrossSectionShape::handleExponent, CrossSectionShape::withHandleExponent);
        new ThicknessFields(bench, thicknessPhoto).addTo(this);
        bench.watch(() -> showLine(height, shaping.now().grind().hasHeight()));
    }

    String held(CrossSectionShape shaping) {
        return ComboBoxItem.lowerCaseWords(grind, shaping.grind().kind()) + ", "
                + new Length(shaping.edgeThicknessMm()).inMillimetres() + " behind the edge";
    }
}
