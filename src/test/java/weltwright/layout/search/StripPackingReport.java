package weltwright.layout.search;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;

/**
 * Prints how densely {@link StripPacking} fills the strips of all instances in a folder, and checks each layout by JTS.
 *
 * <p>Arguments: a folder of JSON files ({@link StripInstance}), seconds for each, and a seed (1 where missing).
 */
public final class StripPackingReport {
    private StripPackingReport() {}

    public static void main(String[] arguments) throws IOException {
        PrintStream out = System.out;
        double seconds = Double.parseDouble(arguments[1]);
        long seed = arguments.length > 2 ? Long.parseLong(arguments[2]) : 1;
        List<Path> files;
        try (Stream<Path> all = Files.list(Path.of(arguments[0]))) {
            files = all.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList();
        }
        out.printf(
                "%-16s %6s %12s %9s %14s %14s%n",
                "instance", "shapes", "length", "density", "overlap/area", "out of bounds");
        for (Path file : files) {
            StripInstance instance = StripInstance.read(file);
            Layout layout = new StripPacking(instance.items(), instance.height(), seed)
                    .search(Budget.seconds(seconds), better -> {});
            List<Geometry> placed = instance.placed(layout);
            out.printf(
                    Locale.ROOT,
                    "%-16s %6d %12.4f %8.2f%% %14.1e %14.1e%n",
                    instance.name(),
                    layout.size(),
                    layout.length(),
                    100 * instance.density(layout.length()),
                    StripInstance.worstOverlap(placed),
                    instance.outOfBounds(placed, layout.length()));
        }
    }
}
