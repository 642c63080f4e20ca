package weltwright.bench;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import weltwright.trouble.Trouble;

/**
 * The rivets, snaps, eyelets and rings at hand: those that come with the program, or a maker's own from a file of the same
 * form, which is JSON and may be edited in any editor.
 *
 * @param source where the sizes come from
 * @param fasteners of all kinds, those liked best first
 * @param rings the same
 */
public record HardwareList(String source, List<Fastener> fasteners, List<Ring> rings) {
    private static final String OWN = "hardware.json";

    private static final ObjectMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .build();

    private static final String FORM = "Compare it with the list that comes with the program, and correct it.";

    public HardwareList {
        fasteners = List.copyOf(fasteners);
        rings = List.copyOf(rings);
    }

    private static final HardwareList USUAL = own();

    /** The list that comes with the program: usual sizes, from memory. */
    public static HardwareList usual() {
        return USUAL;
    }

    private static HardwareList own() {
        try (InputStream in = HardwareList.class.getResourceAsStream(OWN)) {
            return JSON.readValue(in, HardwareList.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A maker's own list. Throws {@link Trouble} where it cannot be read, or has sizes that no hardware has. */
    public static HardwareList read(Path file) {
        HardwareList list;
        try {
            list = JSON.readValue(Files.readString(file), HardwareList.class);
        } catch (JsonProcessingException e) {
            throw new Trouble("The hardware list " + file + " is not in the form that the program reads.", FORM, e);
        } catch (IOException e) {
            throw new Trouble("The hardware list " + file + " cannot be read.", "See whether it is there.", e);
        }
        list.fasteners.stream().filter(f -> !isPossible(f)).findFirst().ifPresent(f -> {
            throw new Trouble("In the hardware list " + file + " the sizes of the " + f.name() + " cannot be.", FORM);
        });
        list.rings.stream().filter(ring -> !(ring.insideMm() > 0 && ring.wireMm() > 0)).findFirst().ifPresent(ring -> {
            throw new Trouble("In the hardware list " + file + " the sizes of the " + ring.name() + " cannot be.", FORM);
        });
        return list;
    }

    private static boolean isPossible(Fastener f) {
        return f.postMm() > 0 && f.capMm() > f.postMm() && f.gripFromMm() >= 0 && f.gripToMm() > f.gripFromMm();
    }

    /**
     * The fastener for holes of a diameter through leather of a thickness: of those whose punch makes that hole the first
     * that grips; if none does, the one that comes nearest; if the hole fits none, the one of the nearest punch.
     */
    public Optional<Fastener> choose(Fastener.Kind kind, double holeMm, double stackMm) {
        return fasteners.stream()
                .filter(f -> f.kind() == kind)
                .min(Comparator.<Fastener>comparingDouble(f -> Math.abs(f.punchMm() - holeMm))
                        .thenComparingDouble(f -> Math.max(
                                0, Math.max(f.gripFromMm() - stackMm, stackMm - f.gripToMm()))));
    }

    /** The narrowest ring that a strap goes through. */
    public Optional<Ring> ringFor(double strapMm) {
        return rings.stream().filter(r -> r.takes(strapMm)).min(Comparator.comparingDouble(Ring::insideMm));
    }
}
