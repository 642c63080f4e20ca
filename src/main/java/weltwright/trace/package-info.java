/** From a photo and its ground to the knife's outline in its mid-plane, with an error that is owned up to. */
package weltwright.trace;
