package weltwright.job;

import com.fasterxml.jackson.databind.PropertyNamingStrategies.SnakeCaseStrategy;
import com.fasterxml.jackson.databind.annotation.JsonNaming;
import java.util.List;
import weltwright.sheath.hardware.Fastener;
import weltwright.sheath.hardware.Hardware;
import weltwright.sheath.hardware.HardwareList;
import weltwright.sheath.hardware.Ring;

/**
 * The list of hardware in a {@link JobDocument}, under the rules that are stated there, and in a {@link HardwareFile}.
 */
@JsonNaming(SnakeCaseStrategy.class)
record HardwareJson(List<FastenerEntry> fasteners, List<RingEntry> rings) {

    static HardwareJson of(HardwareList list) {
        return new HardwareJson(
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
                    JobFields.POST.checkedMm(post),
                    JobFields.CAP.checkedMm(cap),
                    JobFields.GRIP_FROM.checkedMm(gripFrom),
                    JobFields.GRIP_TO.checkedMm(gripTo));
        }
    }

    @JsonNaming(SnakeCaseStrategy.class)
    record RingEntry(String name, double inside, double wire) {
        static RingEntry of(Ring ring) {
            return new RingEntry(ring.name(), ring.insideMm(), ring.wireMm());
        }

        Ring ring() {
            return new Ring(name, JobFields.RING_INSIDE.checkedMm(inside), JobFields.RING_WIRE.checkedMm(wire));
        }
    }
}
