package weltwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Names for jobs that are worked on together: that of the file without its ending, after as many of its folders as are
 * needed to tell it from the others, such as "north/anouk" and "south/anouk". Upper and lower case count as equal, for
 * to some file systems they are.
 */
final class JobNames {
    private JobNames() {}

    /**
     * The names of files, in the order given.
     *
     * @return by the absolute path; a file that is given twice has one name
     */
    static Map<Path, String> of(List<Path> files) {
        List<Tail> tails = files.stream()
                .map(JobNames::absolute)
                .distinct()
                .map(file -> new Tail(file, 0))
                .toList();
        while (true) {
            Map<String, Long> counts =
                    tails.stream().collect(Collectors.groupingBy(tail -> key(tail.name()), Collectors.counting()));
            List<Tail> longer = tails.stream()
                    .map(tail -> counts.getOrDefault(key(tail.name()), 0L) > 1 ? tail.longer() : tail)
                    .toList();
            if (longer.equals(tails)) {
                return numbered(tails);
            }
            tails = longer;
        }
    }

    static Path absolute(Path file) {
        return file.toAbsolutePath().normalize();
    }

    /** A name as part of that of a file. */
    static String inFileName(String name) {
        return name.replace('/', '-');
    }

    /** Files that differ in their ending alone are told apart by a number. */
    private static Map<Path, String> numbered(List<Tail> tails) {
        Set<String> taken = new HashSet<>();
        Map<Path, String> names = new LinkedHashMap<>();
        for (Tail tail : tails) {
            String name = tail.name();
            String free = name;
            for (int n = 2; !taken.add(key(free)); n++) {
                free = name + " " + n;
            }
            names.put(tail.file, free);
        }
        return names;
    }

    private static String key(String name) {
        return inFileName(name).toLowerCase(Locale.ROOT);
    }

    /**
     * The end of a path.
     *
     * @param folders how many of the file's folders it has
     */
    private record Tail(Path file, int folders) {
        Tail longer() {
            return new Tail(file, Math.min(folders + 1, file.getNameCount() - 1));
        }

        String name() {
            List<String> parts = new ArrayList<>();
            int last = file.getNameCount() - 1;
            for (int i = last - folders; i < last; i++) {
                parts.add(file.getName(i).toString());
            }
            parts.add(file.getName(last).toString().replaceFirst("\\.[^.]*$", ""));
            return String.join("/", parts);
        }
    }
}
