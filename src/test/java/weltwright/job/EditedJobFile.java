package weltwright.job;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;

/** Writes job files that the program itself would not write. */
final class EditedJobFile {
    private EditedJobFile() {}

    /** Writes a full job, its document edited. */
    static void write(Path file, Consumer<ObjectNode> edit) throws IOException {
        write(file, edit, "photo.png", TestJobs.photo().bytes());
    }

    static void write(Path file, Consumer<ObjectNode> edit, String photo, byte[] picture) throws IOException {
        JobFile.write(TestJobs.full(), file);
        ObjectMapper mapper = new ObjectMapper();
        ObjectNode json;
        try (ZipFile zip = new ZipFile(file.toFile())) {
            json = (ObjectNode) mapper.readTree(zip.getInputStream(zip.getEntry("job.json")));
        }
        edit.accept(json);
        zip(file, mapper.writeValueAsBytes(json), out -> {
            out.putNextEntry(new ZipEntry(photo));
            out.write(picture);
        });
    }

    static void zip(Path file, byte[] json, More more) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry("job.json"));
            zip.write(json);
            more.write(zip);
        }
        Files.write(file, bytes.toByteArray());
    }

    interface More {
        void write(ZipOutputStream zip) throws IOException;
    }
}
