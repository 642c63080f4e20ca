package weltwright.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.spec.BeltAttachment;
import weltwright.sheath.spec.Leather;
import weltwright.sheath.spec.SheathSpec;
import weltwright.sheath.spec.SpecFields;
import weltwright.sheath.spec.Stitching;
import weltwright.units.LengthField;
import weltwright.units.MeasureUnit;

/**
 * The maker's own defaults, from which a new job begins. A job that was begun before keeps its values.
 *
 * @param leathersMm thicknesses of the leathers that the maker cuts, that for new jobs first
 * @param pitchesMm pitches of the maker's pricking irons, that for new jobs first
 * @param threadsMm diameters of the maker's threads, that for new jobs first; empty where each job takes the one that
 *     goes with its pitch
 * @param marginMm distance of the stitch row from the outer edge
 * @param beltWidthMm width of the belt
 * @param hardware rivets, snaps, eyelets and rings at hand; empty where a new job takes those of the job before
 * @param typed what the maker typed for these lengths, by the name of the field, such as "8 oz, 3 mm"
 */
@RecordBuilder
public record MakerDefaults(
        List<Double> leathersMm,
        List<Double> pitchesMm,
        List<Double> threadsMm,
        double marginMm,
        double beltWidthMm,
        Optional<HardwareList> hardware,
        Map<String, String> typed)
        implements MakerDefaultsBuilder.With {
    /** Tells a text with a unit from a bare number, which would be read in the unit that is chosen at the time. */
    private static final Pattern UNIT = Pattern.compile("[\\p{L}\"″]");

    /** The values of the standard sheath. */
    public static final MakerDefaults USUAL = new MakerDefaults(
            List.of(Leather.USUAL.thicknessMm()),
            List.of(Stitching.USUAL.pitchMm()),
            List.of(),
            Stitching.USUAL.marginMm(),
            BeltAttachment.USUAL.beltWidthMm(),
            Optional.empty(),
            Map.of());

    public MakerDefaults {
        Objects.requireNonNull(hardware);
        leathersMm = List.copyOf(leathersMm);
        pitchesMm = List.copyOf(pitchesMm);
        threadsMm = List.copyOf(threadsMm);
        if (leathersMm.isEmpty() || pitchesMm.isEmpty()) {
            throw new IllegalArgumentException("no leather or no iron for new jobs");
        }
        typed = Map.copyOf(typed);
    }

    /** Replaces the text that the maker typed for a length; empty where the program wrote it. */
    public MakerDefaults withTyped(String field, Optional<String> text) {
        Map<String, String> texts = new HashMap<>(typed);
        text.ifPresentOrElse(words -> texts.put(field, words), () -> texts.remove(field));
        return withTyped(texts);
    }

    /** Returns the leathers as texts of a field: as the maker typed them with a unit, else in mm. */
    public List<String> leatherTexts() {
        return texts(SpecFields.LEATHER_THICKNESS, leathersMm);
    }

    /** Returns the pitches of the irons as texts of a field, as those of the leathers. */
    public List<String> pitchTexts() {
        return texts(SpecFields.PITCH, pitchesMm);
    }

    /** Returns the diameters of the threads as texts of a field, as those of the leathers. */
    public List<String> threadTexts() {
        return texts(SpecFields.THREAD, threadsMm);
    }

    private List<String> texts(LengthField field, List<Double> mm) {
        String[] parts = LengthField.SEPARATOR.split(typed.getOrDefault(field.name(), ""), -1);
        return IntStream.range(0, mm.size())
                .mapToObj(i -> i < parts.length && UNIT.matcher(parts[i]).find()
                        ? parts[i].strip()
                        : MeasureUnit.MILLIMETRE.formatExactly(mm.get(i)))
                .toList();
    }

    /**
     * An empty job, as {@link Job#begin} makes it, with these values.
     *
     * @param before hardware for the job where there is none here
     */
    public Job begin(LocalDate today, HardwareList before) {
        Job empty = Job.begin(today);
        SheathSpec standard = empty.spec();
        Job job = empty.withSpec(standard.withLeather(standard.leather().withThicknessMm(leathersMm.get(0)))
                .withStitching(standard.stitching()
                        .withPitchMm(pitchesMm.get(0))
                        .withMarginMm(marginMm)
                        .withThreadMm(threadsMm.stream().mapToDouble(mm -> mm).findFirst()))
                .withBelt(standard.belt().withBeltWidthMm(beltWidthMm))
                .withHardware(hardware.orElse(before)));
        for (Map.Entry<String, String> text : typed.entrySet()) {
            job = job.withTyped(text.getKey(), Optional.of(LengthField.SEPARATOR.split(text.getValue(), 2)[0].strip()));
        }
        return job;
    }
}
