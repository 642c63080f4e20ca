package weltwright.app.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;

/** The options for the cutting machine. */
final class CutterOptions {
    @Option(
            names = "--bed-width",
            paramLabel = "LENGTH",
            description = "Width of the cutting machine's bed. Default: ${DEFAULT-VALUE}.")
    private @Nullable String width;

    @Option(
            names = "--bed-height",
            paramLabel = "LENGTH",
            description = "Height of the cutting machine's bed, from front to back. Default: ${DEFAULT-VALUE}.")
    private @Nullable String height;

    @Option(
            names = "--side-up",
            paramLabel = "SIDE",
            description =
                    "Which side of the leather lies up on the bed: grain, where its flaws are seen; or flesh, where"
                            + " the machine can mark folds and notches unseen. The pieces are then mirrored. Default: ${DEFAULT-VALUE}.")
    private @Nullable LeatherSide sideUp;

    CutterBed toBed() {
        CutterBed defaults = CutterBed.USUAL;
        return new CutterBed(
                width == null ? defaults.widthMm() : CutterBed.WIDTH.readMm(width),
                height == null ? defaults.heightMm() : CutterBed.HEIGHT.readMm(height),
                sideUp == null ? defaults.sideUp() : sideUp);
    }
}
