package weltwright.trace.ground;

import static org.assertj.core.api.Assertions.assertThat;

import weltwright.fuzz.FuzzedInput;

/** Any text as a rectangle with its corners: refused, or four corners that are numbers. */
public final class RectangleParserFuzzTarget {
    private RectangleParserFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        String typed = FuzzedInput.text(input);
        FuzzedInput.unlessRefused(() -> RectangleParser.read(typed))
                .ifPresent(rectangle -> assertThat(rectangle.corners())
                        .hasSize(4)
                        .allMatch(corner -> Double.isFinite(corner.x()) && Double.isFinite(corner.y())));
    }
}
