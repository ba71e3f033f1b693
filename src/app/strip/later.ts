/** What a step says of itself while there is no ground to work on. */
export const afterTheParcel = "after the parcel is drawn";
