package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import weltwright.fuzz.FuzzedInput;

/** Any bytes as a list of prices: refused, or a list that reads back equal when it is saved. */
public final class PriceFileFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("prices.json");

    private PriceFileFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        FuzzedInput.unlessRefused(() -> PriceFile.read(FOLDER.holding(input))).ifPresent(prices -> {
            FOLDER.holding(new byte[0]);
            PriceFile.write(prices, FOLDER.file());
            assertThat(PriceFile.read(FOLDER.file())).isEqualTo(prices);
        });
        FOLDER.holdsNothingElse();
    }
}
