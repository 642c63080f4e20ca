package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import weltwright.sheath.Fastener;
import weltwright.sheath.Hardware;
import weltwright.sheath.HardwareList;
import weltwright.sheath.Ring;

/**
 * The hardware at hand in {@link JobDocument}, and in a file of its own ({@link HardwareFile}), under the same rules.
 */
@JsonNaming(SnakeCaseStrategy.class)
record HardwareEntry(List<FastenerEntry> fasteners, List<RingEntry> rings) {

    static HardwareEntry of(HardwareList list) {
        return new HardwareEntry(
                list.fasteners().stream().map(FastenerEntry::of).toList(),
                list.rings().stream().map(RingEntry::of).toList());
    }

    HardwareList list() {
        return new HardwareList(
                fasteners.stream().map(FastenerEntry::fastener).toList(),
                rings.stream().map(RingEntry::ring).toList());
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record FastenerEntry(String name, Hardware.Kind kind, double post, double cap, double gripFrom, double gripTo) {
        static FastenerEntry of(Fastener fastener) {
            return new FastenerEntry(
                    fastener.name(),
                    fastener.kind(),
                    fastener.postMm(),
                    fastener.capMm(),
                    fastener.gripFromMm(),
                    fastener.gripToMm());
        }

        Fastener fastener() {
            return new Fastener(
                    name,
                    kind,
                    Fields.POST.checkedMm(post),
                    Fields.CAP.checkedMm(cap),
                    Fields.GRIP_FROM.checkedMm(gripFrom),
                    Fields.GRIP_TO.checkedMm(gripTo));
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record RingEntry(String name, double inside, double wire) {
        static RingEntry of(Ring ring) {
            return new RingEntry(ring.name(), ring.insideMm(), ring.wireMm());
        }

        Ring ring() {
            return new Ring(name, Fields.RING_INSIDE.checkedMm(inside), Fields.RING_WIRE.checkedMm(wire));
        }
    }
}
