package weltwright.image.metadata;

/**
 * Make and model of a camera, from Exif data.
 *
 * @param make may be empty
 * @param model may be empty, but not both
 */
public record CameraIdentity(String make, String model) {
    @Override
    public String toString() {
        // Many cameras repeat the make in the model.
        return model.startsWith(make) ? model : (make + " " + model).strip();
    }
}
