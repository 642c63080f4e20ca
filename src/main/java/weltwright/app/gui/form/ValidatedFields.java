package weltwright.app.gui.form;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.job.JobFields;
import weltwright.units.DigitNormalizer;
import weltwright.units.Length;
import weltwright.units.LengthField;
import weltwright.units.NumberField;
import weltwright.units.TextField;

/** The kinds of line that the forms are made of. */
public final class ValidatedFields {
    private static final DateTimeFormatter SHOWN = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);
    private static final List<DateTimeFormatter> READ = Stream.of("d MMM uuuu", "d MMMM uuuu", "uuuu-M-d", "d.M.uuuu")
            .map(ValidatedFields::reading)
            .toList();

    /** A comma without a space after it is a decimal comma. */
    private static final Pattern BETWEEN = Pattern.compile(";|,\\s|\\band\\b");

    private ValidatedFields() {}

    /** A length in mm, typed in any unit that its field takes. */
    public static ValidatedField<Double> length(LengthField field, double mm) {
        return new ValidatedField<>(field.name(), mm, field::readMm, v -> new Length(v).inMillimetres(), true);
    }

    /** The same, not taken before Enter or leaving the line: where each new value sets long work off. */
    public static ValidatedField<Double> slowLength(LengthField field, double mm) {
        return new ValidatedField<>(field.name(), mm, field::readMm, v -> new Length(v).inMillimetres(), false);
    }

    /**
     * A length that may be left out; not taken before Enter or leaving the line.
     *
     * @param check gives the length back, or throws {@link UserFacingException} that says why it cannot be
     */
    public static ValidatedField<OptionalDouble> lengthIfAny(LengthField field, DoubleUnaryOperator check) {
        return new ValidatedField<>(
                field.name(),
                OptionalDouble.empty(),
                text -> text.isBlank()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(check.applyAsDouble(field.readMm(text))),
                v -> v.isPresent() ? new Length(v.getAsDouble()).inMillimetres() : "",
                false);
    }

    public static ValidatedField<String> words(TextField field, String value) {
        return new ValidatedField<>(
                field.name(), value, text -> field.read(text).strip(), Function.identity(), true);
    }

    public static ValidatedField<Double> number(NumberField field, double value) {
        return new ValidatedField<>(field.name(), value, field::read, ValidatedFields::plain, true);
    }

    /**
     * A number that may be typed with its sign, such as ° or %.
     *
     * @param sign shown behind the number
     */
    public static ValidatedField<Double> signed(NumberField field, String sign, double value) {
        return new ValidatedField<>(
                field.name(),
                value,
                text -> field.read(text.strip().endsWith(sign) ? text.strip().replace(sign, "") : text),
                v -> plain(v) + sign,
                true);
    }

    /** A stitch length in mm, typed as a length or as stitches per inch. */
    public static ValidatedField<Double> pitch(double mm) {
        return new ValidatedField<>(
                JobFields.PITCH.name(), mm, JobFields::readPitchMm, v -> new Length(v).inMillimetres(), true);
    }

    /** Lengths one after another, or none; not taken before Enter or leaving the line. */
    public static ValidatedField<List<Double>> lengths(String name, LengthField each) {
        return new ValidatedField<>(
                name,
                List.of(),
                text -> Stream.of(BETWEEN.split(text))
                        .filter(part -> !part.isBlank())
                        .map(each::readMm)
                        .toList(),
                v -> v.stream().map(mm -> new Length(mm).inMillimetres()).collect(Collectors.joining(", ")),
                false);
    }

    /** A number that may be left out; not taken before Enter or leaving the line. */
    public static ValidatedField<OptionalDouble> numberIfAny(NumberField field, OptionalDouble value) {
        return new ValidatedField<>(
                field.name(),
                value,
                text -> text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(field.read(text)),
                v -> v.isPresent() ? plain(v.getAsDouble()) : "",
                false);
    }

    /** A day that may be left out. */
    public static ValidatedField<Optional<LocalDate>> dayIfAny(String name, Optional<LocalDate> value) {
        return new ValidatedField<>(
                name,
                value,
                text -> text.isBlank()
                        ? Optional.empty()
                        : Optional.of(readDay(name, DigitNormalizer.ascii(text.strip()))),
                v -> v.map(ValidatedFields::day).orElse(""),
                false);
    }

    public static String day(LocalDate day) {
        return SHOWN.format(day);
    }

    /** Strict: there is no 31 February. */
    private static DateTimeFormatter reading(String pattern) {
        return new DateTimeFormatterBuilder()
                .parseCaseInsensitive()
                .appendPattern(pattern)
                .toFormatter(Locale.ENGLISH)
                .withResolverStyle(ResolverStyle.STRICT);
    }

    private static LocalDate readDay(String name, String text) {
        for (DateTimeFormatter format : READ) {
            try {
                return LocalDate.parse(text, format);
            } catch (DateTimeParseException e) {
                // perhaps written in the next way
            }
        }
        throw new UserFacingException(
                "“" + text + "” cannot be read as a day (" + name + ").",
                "Write it like " + day(LocalDate.of(2027, 3, 24)) + ", or leave it empty.");
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString(Math.round(number)) : Double.toString(number);
    }
}
