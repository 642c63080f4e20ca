package weltwright.app.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.job.JobFields;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Grind;

/** The options for the knife's cross-sections. */
final class KnifeCrossSectionOptions {
    @Option(
            names = "--edge-thickness",
            paramLabel = "LENGTH",
            description = "Thickness of the blade just behind its edge. Default: ${DEFAULT-VALUE}.")
    private @Nullable String edgeThickness;

    @Option(
            names = "--grind",
            paramLabel = "KIND",
            description =
                    "How the blade is ground. full_flat: a wedge from edge to spine. partial_flat, hollow: up to a"
                            + " line below the spine. short_bevel: the same, and out to the edge itself. double_edged: an edge on"
                            + " both sides. Default: ${DEFAULT-VALUE}.")
    private Grind.@Nullable Kind grind;

    @Option(
            names = "--grind-height",
            paramLabel = "LENGTH",
            description =
                    "How far up from the edge the grind reaches, where it ends below the spine. Default: ${DEFAULT-VALUE}.")
    private @Nullable String grindHeight;

    @Option(
            names = "--handle-squareness",
            paramLabel = "NUMBER",
            description =
                    "How square the handle is, cut across: 2 is an ellipse, 4 and more a slab with rounded corners."
                            + " Default: ${DEFAULT-VALUE}.")
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
                handleSquareness == null
                        ? before.handleExponent()
                        : JobFields.HANDLE_SQUARENESS.read(handleSquareness));
    }
}
