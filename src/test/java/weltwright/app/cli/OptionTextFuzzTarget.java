package weltwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import weltwright.fuzz.FuzzedInput;

/** Any bytes as an options file, and any text as a size of stock and as a pair of lengths. */
public final class OptionTextFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("knife.args");

    private OptionTextFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        FuzzedInput.unlessRefused(() -> OptionsFile.expand(new String[] {"@" + FOLDER.holding(input)}))
                .ifPresent(words -> assertThat(words).doesNotContainNull());
        String typed = FuzzedInput.text(input);
        FuzzedInput.unlessRefused(() -> StockSize.read(typed))
                .ifPresent(size -> assertThat(size.lengthMm()).isGreaterThanOrEqualTo(size.heightMm()));
        FuzzedInput.unlessRefused(() -> LengthPair.SHEET_BARS.readScale(typed));
        FuzzedInput.unlessRefused(() -> LengthPair.GUARD.readMm(typed));
        FOLDER.holdsNothingElse();
    }
}
