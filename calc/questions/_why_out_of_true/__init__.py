"""Parts of Why is it out of true?"""
