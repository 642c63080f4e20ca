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
import java.util.function.ToDoubleBiFunction;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import weltwright.error.UserFacingException;
import weltwright.job.JobFields;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.sheath.spec.SpecFields;
import weltwright.units.DigitNormalizer;
import weltwright.units.LengthField;
import weltwright.units.LengthUnit;
import weltwright.units.MeasureUnit;
import weltwright.units.NumberField;
import weltwright.units.TextField;

/** Creates the validated fields of the forms: lengths, numbers, texts and dates. */
public final class FieldFactory {
    private static final Messages MESSAGES = Messages.of(FieldFactory.class);

    private static final Locale LOCALE = Language.current() == Language.ENGLISH
            ? Locale.ENGLISH
            : Language.current().locale();
    private static final DateTimeFormatter DISPLAY_FORMAT = DateTimeFormatter.ofPattern(MESSAGES.text("date"), LOCALE);
    private static final List<DateTimeFormatter> INPUT_FORMATS = Stream.of(
                    MESSAGES.text("date"), "d MMM uuuu", "d MMMM uuuu", "d. MMMM uuuu", "uuuu-M-d", "d.M.uuuu")
            .map(FieldFactory::dateFormat)
            .toList();

    private FieldFactory() {}

    /** Creates a field for a length in mm that commits while typing. */
    public static ValidatedField<Double> length(LengthField field, double mm) {
        return new ValidatedField<>(field.name(), mm, lengthFormat(field::readMm), true);
    }

    /**
     * Creates a field for a length in mm that does not commit while typing, for values that start long computations.
     */
    public static ValidatedField<Double> lengthOnCommit(LengthField field, double mm) {
        return new ValidatedField<>(field.name(), mm, lengthFormat(field::readMm), false);
    }

    /**
     * Creates a field for what a printed length measures, which the print gives in mm: so it is read and shown in mm,
     * whatever unit is chosen. It does not commit while typing.
     */
    public static ValidatedField<Double> printedLength(LengthField field, double mm) {
        TextFormat<Double> length = lengthFormat(field::readMm);
        return new ValidatedField<>(
                field.name(),
                mm,
                TextFormat.of(
                        text -> length.read(text, MeasureUnit.MILLIMETRE),
                        value -> length.write(value, MeasureUnit.MILLIMETRE)),
                false);
    }

    /**
     * Creates a field for an optional length in mm that does not commit while typing.
     *
     * @param check returns the length, or throws {@link UserFacingException} where it is not valid
     */
    public static ValidatedField<OptionalDouble> optionalLength(LengthField field, DoubleUnaryOperator check) {
        TextFormat<Double> length = lengthFormat(field::readMm);
        return new ValidatedField<>(
                field.name(),
                OptionalDouble.empty(),
                new TextFormat<>() {
                    @Override
                    public OptionalDouble read(String text, MeasureUnit unit) {
                        return text.isBlank()
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(check.applyAsDouble(length.read(text, unit)));
                    }

                    @Override
                    public String write(OptionalDouble mm, MeasureUnit unit) {
                        return mm.isPresent() ? length.write(mm.getAsDouble(), unit) : "";
                    }
                },
                false);
    }

    public static ValidatedField<String> text(TextField field, String value) {
        return new ValidatedField<>(
                field.name(), value, TextFormat.of(text -> field.read(text).strip(), Function.identity()), true);
    }

    public static ValidatedField<Double> number(NumberField field, double value) {
        return new ValidatedField<>(field.name(), value, TextFormat.of(field::read, FieldFactory::formatNumber), true);
    }

    /**
     * Creates a field for a number with a unit such as ° or %, which need not be typed.
     *
     * @param unit shown after the number
     */
    public static ValidatedField<Double> numberWithUnit(NumberField field, String unit, double value) {
        return new ValidatedField<>(
                field.name(),
                value,
                TextFormat.of(
                        text -> field.read(
                                text.strip().endsWith(unit) ? text.strip().replace(unit, "") : text),
                        v -> formatNumber(v) + unit),
                true);
    }

    /** Creates a field for a stitch length in mm, typed as a length or as stitches per inch. */
    public static ValidatedField<Double> stitchPitch(double mm) {
        return new ValidatedField<>(SpecFields.PITCH.name(), mm, lengthFormat(JobFields::readPitchMm), true);
    }

    /** Creates a field for a list of lengths in mm, which may be empty; it does not commit while typing. */
    public static ValidatedField<List<Double>> lengthList(String name, LengthField each) {
        return lengthList(name, List.of(), lengthFormat(each::readMm), all -> all);
    }

    /** Creates a field for diameters of threads in mm, which may be none; it does not commit while typing. */
    public static ValidatedField<List<Double>> threads(List<Double> mm) {
        LengthField each = SpecFields.THREAD;
        return lengthList(each.name(), mm, lengthFormat(each::readMm), all -> all);
    }

    /** Creates a field for thicknesses of leather in mm, at least one; it does not commit while typing. */
    public static ValidatedField<List<Double>> leathers(List<Double> mm) {
        LengthField each = SpecFields.LEATHER_THICKNESS;
        return lengthList(each.name(), mm, lengthFormat(each::readMm), FieldFactory::atLeastOne);
    }

    /** Creates a field for stitch lengths in mm, at least one; it does not commit while typing. */
    public static ValidatedField<List<Double>> stitchPitches(List<Double> mm) {
        return lengthList(SpecFields.PITCH.name(), mm, lengthFormat(JobFields::readPitchMm), FieldFactory::atLeastOne);
    }

    private static List<Double> atLeastOne(List<Double> all) {
        if (all.isEmpty()) {
            throw new UserFacingException(MESSAGES.text("list.empty"), MESSAGES.text("list.empty.cure"));
        }
        return all;
    }

    /** @param check returns the lengths, or throws {@link UserFacingException} where they are not valid */
    private static ValidatedField<List<Double>> lengthList(
            String name, List<Double> first, TextFormat<Double> length, UnaryOperator<List<Double>> check) {
        return new ValidatedField<>(
                name,
                first,
                new TextFormat<>() {
                    @Override
                    public List<Double> read(String text, MeasureUnit unit) {
                        return check.apply(Stream.of(LengthField.SEPARATOR.split(text))
                                .filter(part -> !part.isBlank())
                                .map(part -> length.read(part, unit))
                                .toList());
                    }

                    @Override
                    public String write(List<Double> all, MeasureUnit unit) {
                        return all.stream().map(mm -> length.write(mm, unit)).collect(Collectors.joining(", "));
                    }
                },
                false);
    }

    /** Creates a field for an optional number that does not commit while typing. */
    public static ValidatedField<OptionalDouble> optionalNumber(NumberField field, OptionalDouble value) {
        return new ValidatedField<>(
                field.name(),
                value,
                TextFormat.of(
                        text -> text.isBlank() ? OptionalDouble.empty() : OptionalDouble.of(field.read(text)),
                        v -> v.isPresent() ? formatNumber(v.getAsDouble()) : ""),
                false);
    }

    /** Creates a field for an optional date that does not commit while typing. */
    public static ValidatedField<Optional<LocalDate>> optionalDate(String name, Optional<LocalDate> value) {
        return new ValidatedField<>(
                name,
                value,
                TextFormat.of(
                        text -> text.isBlank()
                                ? Optional.empty()
                                : Optional.of(parseDate(name, DigitNormalizer.ascii(text.strip()))),
                        v -> v.map(FieldFactory::formatDate).orElse("")),
                false);
    }

    /** @param reader reads a length in mm from a text, with the unit of a number without one */
    private static TextFormat<Double> lengthFormat(ToDoubleBiFunction<String, LengthUnit> reader) {
        return new TextFormat<>() {
            @Override
            public Double read(String text, MeasureUnit unit) {
                return reader.applyAsDouble(text, unit.ofBareNumbers());
            }

            @Override
            public String write(Double mm, MeasureUnit unit) {
                return unit.formatExactly(mm);
            }
        };
    }

    public static String formatDate(LocalDate day) {
        return DISPLAY_FORMAT.format(day);
    }

    /** Returns a strict format, which refuses 31 February. */
    private static DateTimeFormatter dateFormat(String pattern) {
        return new DateTimeFormatterBuilder()
                .parseCaseInsensitive()
                .appendPattern(pattern)
                .toFormatter(LOCALE)
                .withResolverStyle(ResolverStyle.STRICT);
    }

    private static LocalDate parseDate(String name, String text) {
        for (DateTimeFormatter format : INPUT_FORMATS) {
            try {
                return LocalDate.parse(text, format);
            } catch (DateTimeParseException e) {
                // the next format may fit
            }
        }
        throw new UserFacingException(
                MESSAGES.text("field-factory.cannot-be-read-as-a", text, name),
                MESSAGES.text("field-factory.write-it-like-or-leave", formatDate(LocalDate.of(2027, 3, 24))));
    }

    private static String formatNumber(double number) {
        return number == Math.rint(number)
                ? Long.toString(Math.round(number))
                : Language.decimal(Double.toString(number));
    }
}
