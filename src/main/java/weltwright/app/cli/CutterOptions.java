package weltwright.app.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.output.cutter.CutterBed;
import weltwright.output.cutter.LeatherSide;

/** The options for the cutting machine. */
final class CutterOptions {
    @Option(names = "--bed-width", paramLabel = "LENGTH")
    private @Nullable String width;

    @Option(names = "--bed-height", paramLabel = "LENGTH")
    private @Nullable String height;

    @Option(names = "--side-up", paramLabel = "SIDE")
    private @Nullable LeatherSide sideUp;

    CutterBed toBed() {
        CutterBed defaults = CutterBed.USUAL;
        return new CutterBed(
                width == null ? defaults.widthMm() : CutterBed.WIDTH.readMm(width),
                height == null ? defaults.heightMm() : CutterBed.HEIGHT.readMm(height),
                sideUp == null ? defaults.sideUp() : sideUp);
    }
}
