package weltwright.image.metadata;

/**
 * Which camera took a photo, as its Exif data name it.
 *
 * @param make its maker; may be empty
 * @param model its model; may be empty, but not both
 */
public record CameraIdentity(String make, String model) {
    @Override
    public String toString() {
        // Many a model repeats its maker.
        return model.startsWith(make) ? model : (make + " " + model).strip();
    }
}
