package weltwright.app.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.job.JobFields;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;
import weltwright.knife.HandleSection;
import weltwright.sheath.spec.SpecFields;
import weltwright.trace.capture.TraceSettings;

/** The options for the knife's cross-sections. */
final class KnifeCrossSectionOptions {
    @Option(names = "--edge-thickness", paramLabel = "LENGTH")
    private @Nullable String edgeThickness;

    @Option(names = "--grind", paramLabel = "KIND")
    private Grind.@Nullable Kind grind;

    @Option(names = "--grind-height", paramLabel = "LENGTH")
    private @Nullable String grindHeight;

    @Option(names = "--handle-section", paramLabel = "SHAPE")
    private @Nullable HandleSection handleSection;

    @Option(names = "--handle-squareness", paramLabel = "NUMBER")
    private @Nullable String handleSquareness;

    /** Returns the shape with the given options applied. */
    CrossSectionShape applyTo(CrossSectionShape before) {
        Grind grindOfKind = before.grind().with(grind == null ? before.grind().kind() : grind);
        Grind given = new Grind(
                grindOfKind.kind(),
                grindHeight == null ? grindOfKind.heightMm() : JobFields.GRIND_HEIGHT.readMm(grindHeight));
        return new CrossSectionShape(
                edgeThickness == null ? before.edgeThicknessMm() : JobFields.EDGE_THICKNESS.readMm(edgeThickness),
                grind == null && grindHeight == null ? before.grind() : given,
                handleExponent(before.handleExponent()));
    }

    private double handleExponent(double before) {
        if (handleSquareness != null) {
            return SpecFields.HANDLE_SQUARENESS.read(handleSquareness);
        }
        return handleSection == null || handleSection == HandleSection.UNKNOWN ? before : handleSection.exponent();
    }

    /** Returns the settings of the trace with the given options applied. */
    TraceSettings applyTo(TraceSettings before) {
        return before.withHandleSection(handleSection == null ? before.handleSection() : handleSection)
                .withDoubleEdged(grind == null ? before.doubleEdged() : grind == Grind.Kind.DOUBLE_EDGED);
    }
}
