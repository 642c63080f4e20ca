package weltwright.window;

import javax.swing.JComboBox;
import weltwright.job.Fields;
import weltwright.job.Job;
import weltwright.knife.Grind;
import weltwright.knife.Shaping;
import weltwright.measure.Length;

/** What a knife is like across its flats, which no photo from above shows. */
final class ShapingForm extends Form {
    private final Entry<Double> edge = Lines.length(Fields.EDGE_THICKNESS, 0);
    private final JComboBox<Choice<Grind.Kind>> grind = Choice.box(
            "grind",
            new Choice<>(Grind.Kind.FULL_FLAT, "Flat, edge to spine"),
            new Choice<>(Grind.Kind.PARTIAL_FLAT, "Flat, part of the way up"),
            new Choice<>(Grind.Kind.SHORT_BEVEL, "Bevel out to the edge"),
            new Choice<>(Grind.Kind.HOLLOW, "Hollow"),
            new Choice<>(Grind.Kind.DOUBLE_EDGED, "Edges on both sides"));
    private final Entry<Double> height = Lines.length(Fields.GRIND_HEIGHT, 0);
    private final JComboBox<Choice<Double>> handle = Choice.box(
            "handle cut across",
            new Choice<>(2.0, "Oval"),
            new Choice<>(Shaping.USUAL_HANDLE, "Between oval and slab"),
            new Choice<>(4.0, "Slab, well rounded"),
            new Choice<>(8.0, "Slab, corners just broken"));

    ShapingForm(Bench bench, ThicknessPhoto thicknessPhoto) {
        super("2 20 8 0");
        Ties<Shaping> shaping = new Ties<>(bench, Job::shaping, Job::withShaping);
        line("Grind", (char) 0, grind, "How the blade is ground from its spine to its edge");
        shaping.tie(
                grind, s -> s.grind().kind(), (s, to) -> s.withGrind(s.grind().with(to)));
        line("Up from the edge", (char) 0, height, "How far up the flats the grind reaches");
        shaping.tie(
                height,
                s -> s.grind().heightMm(),
                (s, mm) -> s.withGrind(new Grind(s.grind().kind(), mm)));
        line("Behind the edge", (char) 0, edge, "Thickness of the blade just behind its cutting edge");
        shaping.tie(edge, Shaping::edgeThicknessMm, Shaping::withEdgeThicknessMm);
        line("Handle", (char) 0, handle, "How the handle is shaped, cut across");
        shaping.tie(handle, Shaping::handleExponent, Shaping::withHandleExponent);
        new ThicknessRows(bench, thicknessPhoto).addTo(this);
        bench.watch(() -> showLine(height, shaping.now().grind().hasHeight()));
    }

    String held(Shaping shaping) {
        return Choice.lowerCaseWords(grind, shaping.grind().kind()) + ", "
                + new Length(shaping.edgeThicknessMm()).inMillimetres() + " behind the edge";
    }
}
