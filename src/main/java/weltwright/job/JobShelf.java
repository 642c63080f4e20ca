package weltwright.job;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import weltwright.error.UserFacingException;

/** All jobs in the folders that the user keeps jobs in. */
public final class JobShelf {
    /** Bound on the time that reading them takes; the jobs that were opened last come first. Chosen by eye. */
    private static final int MOST_JOBS = 400;

    private JobShelf() {}

    /**
     * Reads the jobs in some folders, their sub-folders not included. Files that are missing, damaged or of a newer
     * version are left out.
     *
     * @param opened files that were opened before, which are on the shelf whatever their folder
     */
    public static List<ShelvedJob> read(List<Path> opened, Collection<Path> folders) {
        Set<Path> files = new TreeSet<>();
        List<ShelvedJob> jobs = new ArrayList<>();
        for (Path file : opened) {
            add(file, files, jobs);
        }
        for (Path folder : folders) {
            if (Files.isDirectory(folder)) {
                try (DirectoryStream<Path> found = Files.newDirectoryStream(folder, "*" + JobFile.EXTENSION)) {
                    found.forEach(file -> add(file, files, jobs));
                } catch (IOException | RuntimeException e) {
                    // A folder that cannot be listed has no jobs to show.
                }
            }
        }
        jobs.sort(ShelvedJob.BY_DUE_DATE);
        return jobs;
    }

    private static void add(Path file, Set<Path> seen, List<ShelvedJob> jobs) {
        if (jobs.size() < MOST_JOBS && seen.add(real(file))) {
            read(file).ifPresent(jobs::add);
        }
    }

    private static Path real(Path file) {
        try {
            return file.toRealPath();
        } catch (IOException e) {
            return file.toAbsolutePath(); // it is missing
        }
    }

    private static Optional<ShelvedJob> read(Path file) {
        try {
            return Optional.of(new ShelvedJob(
                    file,
                    JobFile.readWithoutPhoto(file),
                    Files.getLastModifiedTime(file).toInstant()));
        } catch (UserFacingException | IOException e) {
            return Optional.empty();
        }
    }
}
