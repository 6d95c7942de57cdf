/** Tests of the pictures. */
package baymist.picture;
