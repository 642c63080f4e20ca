package weltwright.job;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/**
 * Converts the JSON of job files of older versions to the current {@link JobDocument}. A choice that an older version
 * did not have gets the value that this version implied, so the values are constants here and do not follow the
 * defaults of the program.
 */
final class JobMigrations {
    private static final double STRAP_WIDTH_OF_VERSION_6 = 25.4 * 5 / 8;

    /** The error sources by the texts of versions 1 to 7; the first two are those of the first versions. */
    private static final Map<String, String> ERROR_SOURCES_OF_VERSION_7 = Map.ofEntries(
            Map.entry("the corners found on the sheet", "reference_points"),
            Map.entry("the scale of the printed sheet", "ground_scale"),
            Map.entry("the points found on the ground", "reference_points"),
            Map.entry("the focal length of the lens", "focal_length"),
            Map.entry("the thickness of the handle", "handle_thickness"),
            Map.entry("the scale of the ground", "ground_scale"),
            Map.entry("the thickness that shows at the rim", "thickness_at_rim"),
            Map.entry("finding the edge in the picture", "edge_localization"),
            Map.entry("shadows, which blank ground does not tell from the knife", "shadow"),
            Map.entry("stretches in which the edge hardly shows", "weak_edge"),
            Map.entry("lines beside the edge that may be the edge", "parallel_lines"),
            Map.entry("damage in the photo's file", "file_damage"));

    private JobMigrations() {}

    /** Converts a tree, in place, to {@link JobDocument#VERSION}. Fields that its own version lacked are not added. */
    static JsonNode migrate(JsonNode written) {
        int version = written.path("version").asInt();
        if (written instanceof ObjectNode job) {
            if (version == 1) {
                addCorrectionsAndGround(job);
            }
            if (version == 1 || version == 2) {
                addShapingAndSheathParts(job);
            }
            if (version >= 1 && version <= 4 && job.path("trace") instanceof ObjectNode trace) {
                // The blade's length had the error of the outline, and the edge side was taken as sure.
                trace.put("blade_length95", trace.path("error95").asDouble()).put("edge_sure", 1);
            }
            if (version >= 1 && version <= 5) {
                addConfirmedSpine(job);
            }
            if (version >= 1 && version <= 6) {
                if (job.path("measured") instanceof ObjectNode measured) {
                    measured.putArray("thickness_along");
                }
                addNoGuard(job);
                addStrapLeather(job);
                if (job.path("sheath") instanceof ObjectNode sheath) {
                    sheath.put("forming_give", 2);
                }
            }
            if (version >= 1 && version <= 7 && job.path("trace") instanceof ObjectNode trace) {
                nameErrorSources(trace);
                keepNotesAsFreeText(trace);
            }
            if (version >= 1 && version <= 7 && job.path("sheath") instanceof ObjectNode sheath) {
                sheath.put("guard_opening", "none"); // sheaths past a guard were rejected
            }
            if (version >= 1 && version <= 8 && job.path("measured") instanceof ObjectNode measured) {
                measured.put("handle_section", "unknown").putArray("marks");
            }
            if (version >= 1 && version <= 9) {
                job.putObject("typed");
            }
            if (version >= 1 && version <= 13 && job.path("sheath") instanceof ObjectNode sheath) {
                sheath.putNull("thread");
            }
            if (version >= 1 && version <= 12) {
                job.putNull("finished");
            }
            if (version >= 1 && version <= 10) {
                addCutting(job);
            }
            if (version >= 1 && version <= 11) {
                job.putObject("work_done");
            }
            if (version >= 1 && version <= 3) {
                addHardware(job);
                if (job.path("measured") instanceof ObjectNode measured) {
                    measured.putNull("phone"); // lenses were known from photos only
                }
            }
        }
        return written;
    }

    /** Version 1 had no stretches with weak edges, no measures taken on the knife, and no ground but the sheet. */
    private static void addCorrectionsAndGround(ObjectNode job) {
        job.putArray("calipers");
        job.putArray("to_look_at");
        if (job.path("measured") instanceof ObjectNode measured) {
            measured.put("ground", "sheet");
        }
        if (job.path("trace") instanceof ObjectNode trace) {
            trace.putArray("unsure");
        }
    }

    /** Version 2 had one grind and one shape of handle, and no tilt, strap, choice of throat or leather of the welt. */
    private static void addShapingAndSheathParts(ObjectNode job) {
        if (job.path("measured") instanceof ObjectNode measured) {
            measured.put("grind", "full_flat").put("grind_height", 0).put("handle_squareness", 2.5);
        }
        if (job.path("sheath") instanceof ObjectNode sheath) {
            sheath.put("edge", "forward").put("tilt", 0);
            sheath.put("forming_shrink", 0).put("bulge", "shared");
            sheath.put("welt_in_two", false).putArray("welt_leathers");
            sheath.put("back_stitches", 2);
            sheath.put("throat", "curved").put("throat_depth", 4);
            sheath.put("belt_hold", "tail").putNull("strap");
        }
    }

    /** Up to version 5 the user could exchange the proposed side of the spine, but not confirm it. */
    private static void addConfirmedSpine(ObjectNode job) {
        JsonNode side = job.at("/outline/spine_side");
        JsonNode proposed = job.at("/trace/outline/spine_side");
        boolean exchanged = side.isTextual() && proposed.isTextual() && !side.equals(proposed);
        job.set("spine_told", exchanged ? side : job.nullNode());
    }

    /** Up to version 6 there was no guard; without one the pattern stays as it was. */
    private static void addNoGuard(ObjectNode job) {
        for (String place : List.of("/outline", "/trace/outline")) {
            if (job.at(place) instanceof ObjectNode outline) {
                outline.putNull("guard");
            }
        }
    }

    /** Up to version 6 every strap was 5/8 in wide and cut from the leather of the body. */
    private static void addStrapLeather(ObjectNode job) {
        if (job.path("sheath") instanceof ObjectNode sheath) {
            sheath.put("belt_strap_width", STRAP_WIDTH_OF_VERSION_6).putNull("belt_strap_leather");
            if (sheath.path("strap") instanceof ObjectNode strap) {
                strap.put("width", STRAP_WIDTH_OF_VERSION_6).putNull("leather");
            }
        }
    }

    /** Up to version 7 the terms of an error were identified by their texts. */
    private static void nameErrorSources(ObjectNode trace) {
        for (JsonNode each : trace.path("error_parts")) {
            if (each instanceof ObjectNode part && part.path("cause").isTextual()) {
                JsonNode cause = part.remove("cause");
                JsonNode remedy = part.remove("remedy");
                String source = ERROR_SOURCES_OF_VERSION_7.get(cause.textValue());
                if (source == null) {
                    part.putNull("source").putObject("free_text").set("cause", cause);
                    ((ObjectNode) part.get("free_text")).set("remedy", remedy);
                } else {
                    part.put("source", source).putNull("free_text");
                }
            }
        }
    }

    /** Up to version 7 notes were stored as sentences with rounded numbers. */
    private static void keepNotesAsFreeText(ObjectNode trace) {
        if (trace.path("notes") instanceof ArrayNode notes) {
            for (int i = 0; i < notes.size(); i++) {
                JsonNode sentence = notes.get(i);
                notes.set(i, notes.objectNode().put("kind", "free_text").set("sentence", sentence));
            }
        }
    }

    /** Up to version 10 a job said nothing of the leather that its pieces are cut from. */
    private static void addCutting(ObjectNode job) {
        ObjectNode cutting = job.putObject("cutting");
        cutting.putArray("stocks");
        cutting.putNull("count");
        cutting.put("turns", "nearly_along").put("gap", 3).put("edge_gap", 3);
        cutting.putArray("by_hand");
    }

    /** Up to version 3 there was one list of hardware, and no eyelet. */
    private static void addHardware(ObjectNode job) {
        if (job.path("sheath") instanceof ObjectNode sheath) {
            sheath.put("drain_eyelet", false).set("hardware", hardwareOfVersion3());
        }
    }

    private static JsonNode hardwareOfVersion3() {
        try (InputStream in = JobMigrations.class.getResourceAsStream("hardware-of-version-3.json")) {
            return JobFile.JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
