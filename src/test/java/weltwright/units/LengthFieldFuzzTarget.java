package weltwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import weltwright.fuzz.FuzzedInput;

/**
 * Any text as a length, of leather and not, with each default unit: refused, or a length within the field's bounds,
 * which is read as itself when the program writes it in mm.
 */
public final class LengthFieldFuzzTarget {
    private static final LengthField HANDLE = LengthField.of("handle thickness", 3, 60);
    private static final LengthField LEATHER = LengthField.ofLeather("thickness of the leather", 0.5, 10);
    private static final NumberField COUNT = NumberField.of("focal length", 5, 2000);
    private static final TextField NAME = TextField.singleLine("customer", 60);

    private LengthFieldFuzzTarget() {}

    /** Called by the fuzzer. */
    public static void fuzzerTestOneInput(byte[] input) {
        String typed = FuzzedInput.text(input);
        for (LengthField field : new LengthField[] {HANDLE, LEATHER}) {
            for (LengthUnit unit : LengthUnit.values()) {
                if (unit != LengthUnit.OUNCE || field.leather()) {
                    FuzzedInput.unlessRefused(() -> field.readMm(typed, unit)).ifPresent(mm -> check(field, mm));
                }
            }
        }
        FuzzedInput.unlessRefused(() -> COUNT.read(typed))
                .ifPresent(number -> assertThat(number).isBetween(5.0, 2000.0));
        FuzzedInput.unlessRefused(() -> NAME.read(typed))
                .ifPresent(name ->
                        assertThat(name.codePointCount(0, name.length())).isLessThanOrEqualTo(60));
    }

    private static void check(LengthField field, double mm) {
        assertThat(mm).isBetween(field.leastMm() - 1e-9, field.greatestMm() + 1e-9);
        String shown = new Length(mm).inMillimetres();
        assertThat(field.readMm(shown)).isCloseTo(mm, within(0.005 + 1e-9));
    }
}
