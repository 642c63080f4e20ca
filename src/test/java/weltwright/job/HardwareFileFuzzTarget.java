package weltwright.job;

import static org.assertj.core.api.Assertions.assertThat;

import weltwright.fuzz.FuzzedInput;

/** Any bytes as a list of hardware: refused, or a list that reads back equal when it is saved. */
public final class HardwareFileFuzzTarget {
    private static final FuzzedInput.Folder FOLDER = new FuzzedInput.Folder("hardware.json");

    private HardwareFileFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        FuzzedInput.unlessRefused(() -> HardwareFile.read(FOLDER.holding(input)))
                .ifPresent(list -> {
                    FOLDER.holding(new byte[0]);
                    HardwareFile.write(list, FOLDER.file());
                    assertThat(HardwareFile.read(FOLDER.file())).isEqualTo(list);
                });
        FOLDER.holdsNothingElse();
    }
}
